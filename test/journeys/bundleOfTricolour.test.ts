import { foreignBundle } from '../support/foreignBundle.ts';

// Three tracks from the hub of 15 mm to the rim of 2 mm on 40 mm, webs of 1 mm between.
const bandMm = (40 - 2 - 15 - 2) / 3;
foreignBundle({
  name: 'tricolour',
  trackRadiiMm: [0, 1, 2].map((track) => 15 + track * (bandMm + 1) + bandMm / 2),
  shows: 'colours',
});
