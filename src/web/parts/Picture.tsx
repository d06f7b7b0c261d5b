import { words } from '../words/en.ts';
import { saveFile } from './saveFile.ts';

interface PictureProps {
  /** SVG as core/report writes it, its text made safe there. */
  readonly svg: string;
  /** Name of the file that it is saved as; no offer where left out. */
  readonly name?: string;
}

/** A picture of the library, and the offer to keep it. */
export function Picture({ svg, name }: PictureProps) {
  return (
    <figure class="figure">
      <div dangerouslySetInnerHTML={{ __html: svg }} />
      {name === undefined ? null : (
        <button type="button" onClick={() => saveFile(`${name}.svg`, svg)}>
          {words.shell.savePicture}
        </button>
      )}
    </figure>
  );
}
