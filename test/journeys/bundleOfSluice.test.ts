import { foreignBundle } from '../support/foreignBundle.ts';

// One track from the hub of 30 mm to the rim on 50 mm: its middle lies 1 mm inside that of the room, by any rim to 4 mm.
foreignBundle({ name: 'sluice', trackRadiiMm: [(30 + 50) / 2 - 1], shows: 'windows' });
