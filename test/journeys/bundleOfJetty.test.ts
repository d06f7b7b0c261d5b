import { foreignBundle } from '../support/foreignBundle.ts';

// Five tracks from the hub of 15 mm to the rim of 2.4 mm on 45 mm, webs of 1.2 mm between.
const bandMm = (45 - 2.4 - 15 - 4 * 1.2) / 5;
foreignBundle({
  name: 'jetty',
  trackRadiiMm: [0, 1, 2, 3, 4].map((track) => 15 + track * (bandMm + 1.2) + bandMm / 2),
  shows: 'windows',
});
