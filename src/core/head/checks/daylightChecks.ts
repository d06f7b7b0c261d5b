import type { Board } from '../../boards/index.ts';
import { showNumber } from '../../units/index.ts';
import { signalOf } from '../circuit/signal.ts';
import { switchLights } from '../circuit/thresholds.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import type { Findings } from './findings.ts';

/** What daylight does: it may leave pulsed lights no room, and steady ones nothing to be seen by at night. */
export function daylightFindings(
  spec: HeadSpec,
  circuit: CircuitSpec,
  board: Board,
  levels: Levels,
): Findings {
  if ((spec.daylightShare ?? 0) === 0) return { problems: [], warnings: [] };
  return circuit.emitters === 'pulsed'
    ? noonFindings(spec, board, levels)
    : nightFindings(spec, circuit, board, levels);
}

/** Lights that are always on: a window must reach its threshold by night too, when the daylight at setting is gone. */
function nightFindings(
  { detector, daylightShare = 0 }: HeadSpec,
  { sensorTo }: CircuitSpec,
  board: Board,
  levels: Levels,
): Findings {
  const signal = signalOf(detector, levels.resistorOhm, sensorTo, board);
  const room = 1 - switchLights(levels, signal, 1, 1).risingLight;
  if (daylightShare <= room) return { problems: [], warnings: [] };
  const share = Math.max(0, Math.floor(100 * room) / 100);
  const pulsed = `Set circuit.emitters to pulsed and circuit.resistorOhm to ${showNumber(levels.resistorOhm, 0)}, or shut`;
  return {
    problems: [
      {
        code: 'head/unread-at-night',
        what: 'With thresholds set in daylight a window would never be lit at night.',
        where: 'head.daylightShare',
        got: `${showNumber(100 * daylightShare, 1)} % of a window’s light from the sky`,
        allowed: `${showNumber(100 * room, 1)} % at most`,
        fix: `${detector.kind === 'photoresistor' ? 'Shut' : pulsed} out daylight until head.daylightShare is ${share} or less.`,
      },
    ],
    warnings: [],
  };
}

/** Lights that are pulsed: what daylight adds is taken off, unless it leaves the converter no room. */
function noonFindings(
  { detector, daylightShare = 0 }: HeadSpec,
  board: Board,
  { resistorOhm }: Levels,
): Findings {
  const nothing = { problems: [], warnings: [] };
  if (detector.kind === 'photoresistor' || detector.kind === 'colour-sensor') return nothing;
  const { litMa, darkMa, saturationV, spread } = detector;
  const most = (board.supplyV - saturationV) / (resistorOhm / 1000);
  const strong = (1 + 2 * spread) * (litMa + daylightShare * (litMa - darkMa));
  if (strong <= most) return nothing;
  const fits = Math.floor(resistorOhm * (most / strong));
  return {
    problems: [
      {
        code: 'head/daylight-saturates',
        what: 'In daylight a lit sensor has no room left, so that taking the daylight off leaves nothing.',
        where: 'head.daylightShare',
        got: `${showNumber(strong, 3)} mA through ${showNumber(resistorOhm, 0)} ohm, two standard deviations counted`,
        allowed: `${showNumber(most, 3)} mA at most`,
        fix: `Set circuit.resistorOhm to ${fits} (ohm) or less, or shut out more daylight.`,
      },
    ],
    warnings: [],
  };
}
