import type { FieldSchema } from '../../../core/instrument/index.ts';
import { positionsOf, type FirstAnswers } from '../../engine/firstAnswers.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { shownDegrees } from '../../parts/numbers.ts';
import { schemaAt } from '../../parts/schemaField.ts';
import { TextField } from '../../parts/TextField.tsx';
import { words } from '../../words/en.ts';

interface StartFormProps {
  readonly answers: FirstAnswers;
  readonly schema: FieldSchema;
  onChange(part: Partial<FirstAnswers>): void;
}

/** Counts that are offered; those beyond what the sensors tell apart are left out. */
const OFFERED = [2, 3, 9, 27, 81, 4, 8, 16, 32, 64, 128, 256, 512, 1024];

function offered(answers: FirstAnswers): number[] {
  const most = positionsOf(answers);
  const isOfThree = answers.detector === 'colour-sensor';
  return OFFERED.filter((count) => count <= most && (count % 2 === 1) === isOfThree);
}

/** A number asked here, with the unit and range that the file has for it, in words of this page. */
function ask(schema: FieldSchema, path: string, description: string): FieldSchema {
  const { defaultRule: _, ...field } = schemaAt(schema, path.split('.'))!;
  return { ...field, description };
}

const optionsOf = (texts: Readonly<Record<string, string>>) =>
  Object.entries(texts).map(([value, text]) => ({ value, text }));

/** The questions: what there is, and how fine and how large it shall be. */
export function StartForm({ answers, schema, onChange }: StartFormProps) {
  const text = words.start;
  return (
    <>
      <TextField
        name={text.name}
        schema={{ description: text.nameHint, maxLength: 80 }}
        value={answers.name}
        onChange={(name) => onChange({ name })}
      />
      <ChoiceField
        name={text.process}
        hint={text.processHint}
        value={answers.process}
        choices={optionsOf(text.processes)}
        onChange={(process) => onChange({ process: process as FirstAnswers['process'] })}
      />
      <SensorQuestions answers={answers} onChange={onChange} />
      <NumberField
        name={text.diameter}
        schema={ask(schema, 'disc.diameterMm', text.diameterHint)}
        value={answers.diameterMm}
        onChange={(diameterMm) => diameterMm !== null && onChange({ diameterMm })}
      />
      <NumberField
        name={text.bore}
        schema={ask(schema, 'disc.bore.diameterMm', text.boreHint)}
        value={answers.boreDiameterMm}
        onChange={(boreDiameterMm) => boreDiameterMm !== null && onChange({ boreDiameterMm })}
      />
    </>
  );
}

function SensorQuestions({ answers, onChange }: Omit<StartFormProps, 'schema'>) {
  const text = words.start;
  /** Another sensor or another count of them offers other steps: the finest stays wished for. */
  const changeParts = (part: Partial<FirstAnswers>): void => {
    const next = offered({ ...answers, ...part });
    const isOffered = next.includes(answers.positions);
    onChange({ ...part, positions: isOffered ? answers.positions : Math.min(Math.max(...next, 2), 64) });
  };
  const counts: FieldSchema = { type: 'integer', minimum: 1, maximum: 16, description: text.sensorsHint };
  return (
    <>
      <ChoiceField
        name={text.detector}
        hint={text.detectorHint}
        value={answers.detector}
        choices={optionsOf(text.detectors)}
        onChange={(detector) => changeParts({ detector: detector as FirstAnswers['detector'] })}
      />
      <NumberField
        name={text.sensors}
        schema={counts}
        value={answers.sensors}
        onChange={(sensors) => sensors !== null && changeParts({ sensors })}
      />
      <ChoiceField
        name={text.positions}
        hint={text.positionsHint(positionsOf(answers))}
        value={String(answers.positions)}
        choices={offered(answers).map((count) => ({
          value: String(count),
          text: text.steps(count, shownDegrees(360 / count)),
        }))}
        onChange={(positions) => onChange({ positions: Number(positions) })}
      />
    </>
  );
}
