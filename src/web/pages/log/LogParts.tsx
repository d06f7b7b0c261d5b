import { ledgerReasons, sampleFlagNames, type LedgerReason } from '../../../core/record/index.ts';
import { shownNumber } from '../../parts/numbers.ts';
import type { OutlinePoint, RecordState, SeenSample } from '../../record/recordData.ts';
import { words } from '../../words/en.ts';
import { channelHealth } from './channelHealth.ts';
import { flagWords } from './flagWords.ts';

const { log } = words;

function digitText(digit: string | null): string {
  if (digit === '1') return log.lit;
  return digit === '0' ? log.dark : digit === null ? log.none : log.third(digit);
}

/** Every channel: what it sees, and whether it moves as it should. */
export function Channels({ samples }: { readonly samples: readonly SeenSample[] }) {
  const health = channelHealth(samples);
  return (
    <section class="panel">
      <h2>{log.channels}</h2>
      {health.length === 0 ? (
        <p>{log.noWords}</p>
      ) : (
        <div class="scroll-x" tabIndex={0} role="region" aria-label={log.channels}>
          <p>{log.channelsHint}</p>
          <table>
            <thead>
              <tr>
                <th scope="col">{log.channel}</th>
                <th scope="col">{log.now}</th>
                <th scope="col">{log.changes}</th>
                <th scope="col">{log.health}</th>
              </tr>
            </thead>
            <tbody>
              {health.map(({ now, changes, says }, channel) => (
                <tr key={channel}>
                  <th scope="row">{channel}</th>
                  <td>{digitText(now)}</td>
                  <td>{changes}</td>
                  <td>{log[says]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Flags samples={samples} />
    </section>
  );
}

function Flags({ samples }: { readonly samples: readonly SeenSample[] }) {
  const counts = new Map<string, number>();
  for (const { flags } of samples)
    if (flags !== 0) for (const name of sampleFlagNames(flags)) counts.set(name, (counts.get(name) ?? 0) + 1);
  return (
    <>
      <h3>{log.flags}</h3>
      {counts.size === 0 ? (
        <p>{log.noFlags}</p>
      ) : (
        <ul>
          {[...counts].map(([name, count]) => (
            <li key={name}>
              {flagWords[name as keyof typeof flagWords]}: {log.flagCount(count, samples.length)}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** Days so far, each as tall as it is covered, and as a table behind them. */
export function CoveredDays({ days }: { readonly days: readonly OutlinePoint[] }) {
  const shown = days.slice(-60);
  const dayText = ({ atMs }: OutlinePoint): string => new Date(atMs - 1).toISOString().slice(0, 10);
  const share = ({ coverage }: OutlinePoint): string => `${shownNumber(100 * coverage, 0)} %`;
  return (
    <section class="panel">
      <h2>{log.coverage}</h2>
      <p>{log.coverageHint}</p>
      <div class="covered-days" aria-hidden="true">
        {shown.map((day) => (
          <span key={day.atMs} style={{ height: `${Math.max(2, 100 * day.coverage)}%` }} />
        ))}
      </div>
      <details>
        <summary>
          {shown.length > 0 ? `${dayText(shown[0]!)} – ${dayText(shown.at(-1)!)}` : log.coverage}
        </summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{log.day}</th>
              <th scope="col">{log.share}</th>
            </tr>
          </thead>
          <tbody>
            {[...shown].reverse().map((day) => (
              <tr key={day.atMs}>
                <th scope="row">{dayText(day)}</th>
                <td>{share(day)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}

/** What the ledger says was lost or repaired. */
export function Ledger({ ledger }: Pick<RecordState, 'ledger'>) {
  return (
    <section class="panel">
      <h2>{log.lost}</h2>
      {ledger.length === 0 ? (
        <p>{log.nothingLost}</p>
      ) : (
        <div class="scroll-x" tabIndex={0} role="region" aria-label={log.lost}>
          <p>{log.lostHint}</p>
          <table>
            <thead>
              <tr>
                <th scope="col">{log.count}</th>
                <th scope="col">{log.reason}</th>
                <th scope="col">{log.did}</th>
              </tr>
            </thead>
            <tbody>
              {ledger.map(({ reason, count }) => (
                <tr key={reason}>
                  <td>{shownNumber(count, 0)}</td>
                  <td>{ledgerReasons[reason as LedgerReason]?.what ?? reason}</td>
                  <td>{ledgerReasons[reason as LedgerReason]?.action ?? ''}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
