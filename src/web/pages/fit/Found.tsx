import type { FittedView } from '../../engine/fitView.ts';
import { Picture } from '../../parts/Picture.tsx';
import { words } from '../../words/en.ts';

/** Repairs told one by one; the rest stays in the command's own document. [-] */
const REPAIRS_SHOWN = 100;

/** What is wrong with the build, and the one thing to do about each. */
export function Causes({ causes }: Pick<FittedView, 'causes'>) {
  const { fit } = words;
  return (
    <section class="panel">
      <h2>{fit.wrongTitle}</h2>
      {causes.length === 0 ? <p>{fit.wrongNone}</p> : null}
      <ol class="causes">
        {causes.map(({ title, evidence, instruction, standing, picture }) => (
          <li key={title}>
            <strong>{title}</strong> <span class="tag">{fit.standings[standing]}</span>
            <p>
              {fit.seen}: {evidence}
            </p>
            <p>
              {fit.do}: {instruction}
            </p>
            <details>
              <summary>{words.shell.picture}</summary>
              <Picture svg={picture} name={standing} />
            </details>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What the recording cannot tell, what has changed, and what was repaired while reading. */
export function Told({ unknowns, changes, repairs }: Pick<FittedView, 'unknowns' | 'changes' | 'repairs'>) {
  const { fit } = words;
  return (
    <>
      {unknowns.length === 0 ? null : (
        <section class="panel">
          <h2>{fit.unknownTitle}</h2>
          <ul>
            {unknowns.map(({ what, why, recordNext }) => (
              <li key={what}>
                <strong>{what}</strong>: {why} {fit.recordNext(recordNext)}
              </li>
            ))}
          </ul>
        </section>
      )}
      {changes === null || changes.length === 0 ? null : (
        <section class="panel">
          <h2>{fit.changesTitle}</h2>
          <ul>
            {changes.map(({ where, before, now, matters }) => (
              <li key={where}>{fit.change(where, before, now, matters)}</li>
            ))}
          </ul>
        </section>
      )}
      {repairs.length === 0 ? null : (
        <details class="panel">
          <summary>{fit.repairsTitle(repairs.length)}</summary>
          <ul>
            {repairs.slice(0, REPAIRS_SHOWN).map(({ file, line, what }, index) => (
              <li key={index}>{fit.repair(file, line, what)}</li>
            ))}
            {repairs.length > REPAIRS_SHOWN ? (
              <li>{fit.repairsMore(repairs.length - REPAIRS_SHOWN)}</li>
            ) : null}
          </ul>
        </details>
      )}
    </>
  );
}

/** The bench certificate's figures. */
export function CertificateTable({ certificate }: Pick<FittedView, 'certificate'>) {
  const { fit } = words;
  return (
    <section class="panel">
      <h2>{fit.certificateTitle}</h2>
      <div class="scroll-x" tabIndex={0} role="group" aria-label={fit.certificateTitle}>
        <table>
          <thead>
            <tr>
              <th scope="col">{fit.figure}</th>
              <th scope="col">{fit.found}</th>
              <th scope="col">{fit.needed}</th>
              <th scope="col">{fit.passes}</th>
            </tr>
          </thead>
          <tbody>
            {certificate.rows.map(({ figure, found, needed, passes }) => (
              <tr key={figure}>
                <th scope="row">{figure}</th>
                <td>{found}</td>
                <td>{needed ?? ''}</td>
                <td>{passes === null ? '' : passes ? fit.yes : fit.no}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
