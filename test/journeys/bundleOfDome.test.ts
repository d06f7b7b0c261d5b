import { foreignBundle } from '../support/foreignBundle.ts';

// One track from the hub of 135 mm to the rim of 4 mm on 150 mm.
foreignBundle({ name: 'dome', trackRadiiMm: [(135 + 146) / 2], shows: 'windows' });
