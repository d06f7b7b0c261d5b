import { words } from '../words/en.ts';
import { saveFile } from './saveFile.ts';
import '../look/figure.css';

interface FigureProps {
  /** A picture made by core/report, which makes every text in it safe. */
  readonly svg: string;
  readonly caption: string;
  /** Name of the file that it is saved as, without its ending. */
  readonly name: string;
}

/** A picture of the library, in the look of the page, to be saved as it is. */
export function Figure({ svg, caption, name }: FigureProps) {
  return (
    <figure class="figure">
      <div class="scroll-x" tabIndex={0} role="region" aria-label={caption}>
        <div dangerouslySetInnerHTML={{ __html: svg }} />
      </div>
      <figcaption>
        {caption}{' '}
        <button type="button" class="small" onClick={() => saveFile(`${name}.svg`, svg)}>
          {words.shell.saveSvg(name)}
        </button>
      </figcaption>
    </figure>
  );
}
