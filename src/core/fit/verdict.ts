import type { Instrument } from '../instrument/index.ts';
import { showDegrees, showNumber } from '../units/index.ts';
import type { Fit } from './fit.ts';

/** Share of the turn that may be misread on the recording itself. [-]; own choice */
const MOST_MISREAD = 0.005;

/** Whether the build, read by its table, meets the need, and why. */
export function verdictOf(
  fit: Omit<Fit, 'verdict' | 'reasons'>,
  { need }: Instrument,
): Pick<Fit, 'verdict' | 'reasons'> {
  const against = shortfalls(fit, need.accuracyDeg);
  if (against.length > 0) return { verdict: 'no', reasons: against };
  const { tableError, byDrawing, byTable } = fit.disc!;
  const read = (share: number): string => `${showNumber(100 * share, 1)} %`;
  return {
    verdict: 'yes',
    reasons: [
      `Read by its table the build is right within ${showDegrees(Number(tableError.maxDeg.toFixed(2)))}, and you need ${showDegrees(need.accuracyDeg)}.`,
      `On the recording itself ${read(byTable.misreadShare + byTable.illegalShare)} is misread by the table, ` +
        `${read(byDrawing.misreadShare + byDrawing.illegalShare)} by the drawing.`,
    ],
  };
}

function shortfalls(fit: Omit<Fit, 'verdict' | 'reasons'>, accuracyDeg: number): string[] {
  const { disc, asBuilt, causes, wiring } = fit;
  const blocking = causes
    .filter(({ standing, costDeg }) => standing === 'mend' && costDeg >= 20)
    .map(({ title }) => `${title}.`);
  if (!wiring && blocking.length === 0) return ['No wiring of this disc explains the recording.'];
  if (!asBuilt && blocking.length === 0) {
    return fit.recording.content === 'counts'
      ? fit.unknowns.map(({ what, why }) => `${what} cannot be known: ${why}`)
      : ['The recording holds no counts, so there are no thresholds to write.'];
  }
  const reasons = [...blocking];
  if (disc && disc.tableError.maxDeg > accuracyDeg) {
    const worst = disc.positions.reduce((a, b) => (b.halfWidthDeg > a.halfWidthDeg ? b : a));
    reasons.push(
      `Position ${worst.position} is ${showDegrees(Number((2 * worst.halfWidthDeg).toFixed(2)))} wide, so that readings are wrong by up to ` +
        `${showDegrees(Number(disc.tableError.maxDeg.toFixed(2)))}; you need ${showDegrees(accuracyDeg)}.`,
    );
  }
  const misread = disc ? disc.byTable.misreadShare + disc.byTable.illegalShare : 0;
  if (misread > MOST_MISREAD) {
    reasons.push(`Even by its table ${showNumber(100 * misread, 1)} % of the recording is misread.`);
  }
  return reasons;
}
