import { useEffect, useState } from 'preact/hooks';
import { saveFile } from '../../parts/saveFile.ts';
import { words } from '../../words/en.ts';
import type { ShownReview } from './shownReview.ts';

const text = words.review;

/** An SVG as a picture: whatever stands in it is drawn and never run. */
function Picture({ svg, caption }: { readonly svg: string; readonly caption: string }) {
  const [url, setUrl] = useState('');
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return url === '' ? null : <img src={url} alt={caption} />;
}

/** What the figures mean, one click away. */
function Meanings({
  ids,
  definitions,
}: {
  readonly ids: readonly string[];
  readonly definitions: ShownReview['definitions'];
}) {
  return (
    <details>
      <summary>{text.means}</summary>
      <dl>
        {ids.map((id) => (
          <div key={id}>
            <dt>{definitions[id]?.term}</dt>
            <dd>
              {definitions[id]?.meaning}
              <small>
                {text.source}: {definitions[id]?.source}
              </small>
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

/** Every picture of the review. */
export function Pictures({ pictures, definitions }: ShownReview) {
  return (
    <>
      {pictures.map(({ name, caption, defined, svg }) => (
        <figure class="panel review-picture" key={name}>
          <Picture svg={svg} caption={caption} />
          <figcaption>{caption}</figcaption>
          <Meanings ids={defined} definitions={definitions} />
          <button type="button" onClick={() => saveFile(`${name}.svg`, `${svg}\n`)}>
            {text.saveSvg(name)}
          </button>
        </figure>
      ))}
    </>
  );
}

function Table({ table }: { readonly table: ShownReview['tables'][number] }) {
  if (table.isLong === true) return <p>{text.long}</p>;
  return (
    <div class="scroll-x" tabIndex={0} role="region" aria-label={table.title}>
      <table>
        <thead>
          <tr>
            {table.headings.map((heading) => (
              <th scope="col" key={heading}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, i) => (
            <tr key={i}>
              {row.map((cell, column) => (
                <td key={column}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Every table of the review, folded but for the first. */
export function Tables({ tables, definitions }: ShownReview) {
  return (
    <section class="panel">
      <h2>{text.tables}</h2>
      {tables.map((table, i) => (
        <details key={table.name} open={i === 0}>
          <summary>{table.title}</summary>
          <Table table={table} />
          <Meanings ids={table.defined} definitions={definitions} />
          <button type="button" onClick={() => saveFile(`${table.name}.csv`, table.csv)}>
            {text.saveCsv(table.name)}
          </button>
        </details>
      ))}
    </section>
  );
}
