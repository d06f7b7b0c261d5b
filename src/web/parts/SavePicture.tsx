import { filesOf } from '../project/project.ts';
import type { PageParts } from '../shell/pageParts.ts';
import { saveFile } from './saveFile.ts';

interface SavePictureProps extends Pick<PageParts, 'engine' | 'project'> {
  readonly name: 'disc' | 'signals' | 'words' | 'code';
  readonly words: string;
}

/** Saves a picture that the engine draws. */
export function SavePicture({ engine, project, name, words }: SavePictureProps) {
  const save = async (): Promise<void> => {
    const answer = await engine.picture(filesOf(project.state.get()), name);
    if (answer.ok) saveFile(`${name}.svg`, answer.value);
  };
  return (
    <button type="button" onClick={() => void save()}>
      {words}
    </button>
  );
}
