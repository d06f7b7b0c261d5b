import { useEffect, useState } from 'preact/hooks';

/** The pages in the order of the job. */
export const pageNames = [
  'weigh',
  'disc',
  'head',
  'prove',
  'make',
  'fit',
  'log',
  'review',
  'explain',
] as const;

/** Pages beside the job: how a project begins, and its file as text. */
const besideNames = ['start', 'file'] as const;

/** Name of a page. */
export type PageName = (typeof pageNames)[number] | (typeof besideNames)[number];

/** The address of a page; a fragment, so that it works from any folder of files. */
export function hrefOf(page: PageName): string {
  return `#/${page}`;
}

function pageOf(hash: string): PageName {
  const name = hash.replace(/^#\/?/, '').split('/')[0];
  return [...pageNames, ...besideNames].find((page) => page === name) ?? 'disc';
}

/** The page that the address names; the disc where it names none. */
export function usePage(): PageName {
  const [page, setPage] = useState(() => pageOf(location.hash));
  useEffect(() => {
    const look = (): void => setPage(pageOf(location.hash));
    addEventListener('hashchange', look);
    return () => removeEventListener('hashchange', look);
  }, []);
  return page;
}
