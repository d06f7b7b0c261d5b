import { weighInstrument, type WeighedNeed } from '../../app/api.ts';
import { purposes } from '../../core/weigh/index.ts';
import type { ProjectFiles } from './asked.ts';
import { memoryFiles } from './memoryFiles.ts';

/** What readings can be for. */
export interface PurposeName {
  readonly name: string;
  readonly title: string;
}

/** Every purpose with its title. */
export function purposeTitles(): PurposeName[] {
  return purposes.map(({ name, title }) => ({ name, title }));
}

/** Ways of sensing held against the need of the file. @throws VanewrightError as `weighInstrument` does */
export function weighView({ files, path }: ProjectFiles, purpose: string | null): Promise<WeighedNeed> {
  return weighInstrument(memoryFiles(files), { path, wind: null, purpose });
}
