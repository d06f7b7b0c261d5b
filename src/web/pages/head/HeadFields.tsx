import { FileField } from '../../parts/FileField.tsx';
import { GroupField } from '../../parts/GroupField.tsx';
import { OptionalGroup } from '../../parts/OptionalGroup.tsx';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

/** Fields of a sensor that a maker measures; the others have defaults from data sheets. */
const measured = ['litOhm', 'darkOhm', 'litMa', 'darkMa', 'middleMa', 'marksRgbCounts'];

const place = ['head.patternedFace', 'head.staggerDeg', 'head.tangentialSdMm', 'head.radialSdMm'];
const placeMore = [
  'head.tiltSdDeg',
  'head.shaftPlaySdMm',
  'head.northSdDeg',
  'head.daylightShare',
  'head.edgeCorrection',
];
const circuit = ['circuit.input', 'circuit.emitters', 'circuit.resistorOhm', 'circuit.thresholds'];
const circuitMore = [
  'circuit.sensorTo',
  'circuit.resistorTolerancePercent',
  'circuit.hysteresisCounts',
  'circuit.noiseCounts',
];
const controller = ['controller.board', 'controller.format', 'controller.lineIntervalMs'];
const controllerMore = ['controller.baud', 'controller.channelPins'];

/** Everything of the file about head, circuit and controller. */
export function HeadFields({ project, schema }: Pick<PageParts, 'project' | 'schema'>) {
  const parts = { project, schema };
  const draw = (path: string) => <FileField key={path} path={path} {...parts} />;
  const more = (paths: readonly string[]) => (
    <details>
      <summary>{words.fields.more}</summary>
      <div class="fields">{paths.map(draw)}</div>
    </details>
  );
  return (
    <div class="fields">
      <section class="panel fields">
        <h2>{words.head.sensor}</h2>
        <GroupField {...parts} path="head.detector" first={measured} />
        <GroupField {...parts} path="head.light" />
        <GroupField {...parts} path="head.aperture" />
      </section>
      <section class="panel fields">
        <h2>{words.head.place}</h2>
        {place.map(draw)}
        <details>
          <summary>{words.fields.more}</summary>
          <div class="fields">
            {placeMore.map(draw)}
            <OptionalGroup {...parts} path="head.penumbra" />
            <OptionalGroup {...parts} path="head.leak" />
          </div>
        </details>
      </section>
      <section class="panel fields">
        <h2>{words.head.circuit}</h2>
        {circuit.map(draw)}
        {more(circuitMore)}
      </section>
      <section class="panel fields">
        <h2>{words.head.controller}</h2>
        {controller.map(draw)}
        {more(controllerMore)}
      </section>
    </div>
  );
}
