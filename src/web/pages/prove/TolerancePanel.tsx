import { useState } from 'preact/hooks';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { FileField, standing } from '../../parts/FileField.tsx';
import { entryOf, kindName } from '../../parts/fieldValue.ts';
import { shownNumber } from '../../parts/numbers.ts';
import { schemaAt } from '../../parts/schemaField.ts';
import { Slider } from '../../parts/Slider.tsx';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

/** Fields that are worth a slider, with the range it runs over; the file takes a wider one. */
const sliders: Readonly<Record<string, readonly [least: number, most: number, step: number]>> = {
  'disc.process.boreSdMm': [0, 1, 0.01],
  'disc.process.edgeSdMm': [0, 0.5, 0.005],
  'disc.process.windowGrowthMm': [-0.6, 0.6, 0.01],
  'head.tangentialSdMm': [0, 1, 0.01],
  'head.radialSdMm': [0, 1, 0.01],
  'head.aperture.widthMm': [0.2, 4, 0.05],
  'head.aperture.diameterMm': [0.2, 4, 0.05],
  'head.aperture.radiusMm': [0.1, 2, 0.05],
  'head.detector.spread': [0, 1, 0.01],
  'head.tiltSdDeg': [0, 4, 0.05],
  'head.shaftPlaySdMm': [0, 0.5, 0.005],
  'head.northSdDeg': [0, 10, 0.1],
  'head.daylightShare': [0, 1, 0.005],
  'circuit.resistorTolerancePercent': [0, 20, 0.5],
  'circuit.noiseCounts': [0.1, 40, 0.1],
  'disc.diameterMm': [30, 300, 1],
  'need.accuracyDeg': [1, 30, 0.1],
  'need.turnRateDegPerS': [1, 720, 1],
};

/** A slider on one field of the file, which budget and yield follow. */
export function TolerancePanel({ project, schema }: Pick<PageParts, 'project' | 'schema'>) {
  const state = useStore(project.state);
  const [path, choose] = useState('disc.process.boreSdMm');
  const text = words.prove;
  const paths = Object.keys(sliders).filter((name) => isInUse(name, state.design?.instrument, schema));
  const chosen = paths.includes(path) ? path : paths[0]!;
  const parts = chosen.split('.');
  const field = schemaAt(schema, parts)!;
  const now = Number(standing(state, parts, field).comesTo ?? 0);
  const [least, most, step] = sliders[chosen]!;
  const unit = field.unit && field.unit !== '-' ? ` ${field.unit}` : '';
  return (
    <section class="panel fields">
      <h2>{text.sliderTitle}</h2>
      <ChoiceField
        name={text.sliderField}
        hint={text.sliderHint}
        value={chosen}
        choices={paths.map((value) => ({ value, text: words.fields.names[value] ?? value }))}
        onChange={choose}
      />
      <Slider
        name={text.slider}
        value={now}
        least={Math.min(least, now)}
        most={Math.max(most, now)}
        step={step}
        shown={`${shownNumber(now, 4)}${unit}`}
        onSlide={(value) => void project.set(parts, value)}
      />
      <FileField key={chosen} path={chosen} project={project} schema={schema} />
    </section>
  );
}

/** Whether a field stands in the kind of its group that is in use. */
function isInUse(path: string, instrument: unknown, schema: PageParts['schema']): boolean {
  const parts = path.split('.');
  const group = schemaAt(schema, parts.slice(0, -1));
  const name = group && kindName(group);
  if (!group || !name) return true;
  const now = parts
    .slice(0, -1)
    .reduce<unknown>((inner, part) => (inner as Record<string, unknown> | undefined)?.[part], instrument);
  const kind = String((now as Record<string, unknown> | undefined)?.[name] ?? '');
  return entryOf(group, kind)?.properties?.[parts.at(-1)!] !== undefined;
}
