import type { Command } from 'commander';
import { fitNorth, type NorthRequest, type NorthTarget } from '../../app/api.ts';
import type { Place } from '../../core/fit/index.ts';
import { EXIT } from '../exit.ts';
import { angleDeg, folderPath } from '../options.ts';
import type { Take } from '../work.ts';
import type { Parts } from '../wire.ts';
import { northDocument, northText } from './northText.ts';
import { instant, numberFrom, placeDeg } from './words.ts';

/** What stands behind `fit north`, read. */
interface NorthWords {
  readonly bearingDeg?: number;
  readonly sigmaDeg: number;
  readonly landmarkDeg?: Place;
  readonly sun?: boolean;
  readonly compassDeg?: number;
  readonly name: string;
  readonly latitudeDeg?: number;
  readonly longitudeDeg?: number;
  readonly at?: string;
  readonly showsDeg?: number;
  readonly write?: boolean;
  readonly out?: string;
}

function targetsOf({ bearingDeg, sigmaDeg, landmarkDeg, sun, compassDeg }: NorthWords): NorthTarget[] {
  return [
    ...(bearingDeg === undefined ? [] : [{ by: 'bearing', bearingDeg, sigmaDeg } as const]),
    ...(landmarkDeg ? [{ by: 'landmark', place: landmarkDeg } as const] : []),
    ...(sun ? [{ by: 'sun' } as const] : []),
    ...(compassDeg === undefined ? [] : [{ by: 'compass', magneticDeg: compassDeg } as const]),
  ];
}

/** Adds `fit north`. */
export function addNorth(fit: Command, parts: Parts, take: Take): void {
  fit
    .command('north')
    .argument('<FILE>', 'instrument file')
    .description('set north: what the display must show while the vane points at something known')
    .option('--landmark-deg <LAT,LON>', 'place of a landmark off a map, north and east positive', placeDeg)
    .option('--sun', 'the sun, at --at: point the vane so that its own shadow falls straight behind it')
    .option('--compass-deg <ANGLE>', 'what a magnetic compass reads towards the target', angleDeg)
    .option('--bearing-deg <ANGLE>', 'bearing of the target from true north, where you know it', angleDeg)
    .option('--sigma-deg <ANGLE>', 'standard error of --bearing-deg', numberFrom(0, 90, 'degrees'), 1)
    .option('--name <WORDS>', 'what the target is, such as "church tower"', 'the target')
    .option(
      '--latitude-deg <ANGLE>',
      'where the vane stands; else site.latitudeDeg',
      numberFrom(-90, 90, 'degrees'),
    )
    .option(
      '--longitude-deg <ANGLE>',
      'where the vane stands; else site.longitudeDeg',
      numberFrom(-180, 180, 'degrees'),
    )
    .option('--at <INSTANT>', 'when, with its zone; else now', instant)
    .option('--shows-deg <ANGLE>', 'what the display shows with the vane pointing there', angleDeg)
    .option('--write', 'put the new site.northOffsetDeg and its day into FILE, comments kept')
    .option('--out <DIR>', 'folder for the picture', folderPath)
    .action((path: string, words: NorthWords) => {
      const request: NorthRequest = {
        path,
        targets: targetsOf(words),
        name: words.name,
        latitudeDeg: words.latitudeDeg ?? null,
        longitudeDeg: words.longitudeDeg ?? null,
        at: words.at ?? new Date().toISOString(),
        showsDeg: words.showsDeg ?? null,
        write: words.write ?? false,
        out: words.out ?? null,
      };
      take('fit north', async (stop) => {
        const north = await fitNorth(parts, request, stop);
        return { exit: EXIT.good, text: northText(north, path), document: northDocument(north) };
      });
    });
}
