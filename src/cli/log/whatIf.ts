import { compareReadings, type LogDesign, type ReadingChoices, type ReadingFigures } from '../../app/api.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import type { OpenStore } from './wire.ts';

const shown = (value: number | null, digits: number): string =>
  value === null ? '-' : value.toFixed(digits);

/** One reading of a station in a line. */
function figuresText(figures: ReadingFigures | null): string {
  if (!figures) return 'nothing';
  const { samples, headings, speeds, meanHeadingDeg, meanSpeedMPerS } = figures;
  return `${samples} samples, ${headings} directions (mean ${shown(meanHeadingDeg, 1)} deg), ${speeds} speeds (mean ${shown(meanSpeedMPerS, 2)} m/s)`;
}

/** `vanewright log FILE --store STORE --what-if` with other choices: what they would make of the same raw bytes. */
export async function runWhatIf(
  { rule }: LogDesign,
  said: ReadingChoices,
  { store, log, choices }: OpenStore,
): Promise<Outcome> {
  const compared = await compareReadings({ store, log, rule, choices: { ...choices, ...said } });
  const lines = ['As stored, and as it would be; nothing was changed.'];
  for (const { station, before, after } of compared.stations) {
    lines.push('', station, `  stored:   ${figuresText(before)}`, `  would be: ${figuresText(after)}`);
  }
  if (compared.ledger.length > 0) lines.push('', 'Repairs that differ');
  for (const { reason, before, after } of compared.ledger) lines.push(`  ${reason}: ${before} -> ${after}`);
  lines.push('', 'To read it so from now on, say the same with --rebuild in place of --what-if.');
  return {
    exit: EXIT.good,
    text: lines.join('\n'),
    document: { command: 'log', ok: true, whatIf: true, ...compared },
  };
}
