import type { OutputFile } from '../../../ports/index.ts';
import { shownNumber } from '../../parts/numbers.ts';
import { saveFile } from '../../parts/saveFile.ts';
import { showFile } from '../../parts/showFile.ts';
import { words } from '../../words/en.ts';
import { byteLength, madeGroups, shownType } from './madeGroups.ts';

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** One file with its offers. */
function MadeFile({ file }: { readonly file: OutputFile }) {
  const { make } = words;
  const type = shownType(file.path);
  const name = nameOf(file.path);
  return (
    <tr>
      <th scope="row">{file.path}</th>
      <td>{make.size(shownNumber(byteLength(file) / 1000, 1))}</td>
      <td>
        <div class="row">
          <button
            type="button"
            aria-label={make.saveOne(file.path)}
            onClick={() => saveFile(name, file.content)}
          >
            {make.save}
          </button>
          {type === null ? null : (
            <button
              type="button"
              aria-label={make.showOne(file.path)}
              onClick={() => showFile(file.content, type)}
            >
              {make.show}
            </button>
          )}
        </div>
      </td>
    </tr>
  );
}

/** Every file of the build, by part. */
export function MadeFiles({ files }: { readonly files: readonly OutputFile[] }) {
  const { make } = words;
  return (
    <>
      {madeGroups(files).map(({ folder, files: inside }) => (
        <section class="panel made" key={folder}>
          <h2>{make.folders[folder] ?? folder}</h2>
          <div class="scroll-x" tabIndex={0} role="group" aria-label={make.folders[folder] ?? folder}>
            <table>
              <tbody>
                {inside.map((file) => (
                  <MadeFile key={file.path} file={file} />
                ))}
              </tbody>
            </table>
          </div>
        </section>
      ))}
    </>
  );
}
