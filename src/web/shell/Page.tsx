import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useStore } from '../project/store.ts';
import { connection } from '../server/askServer.ts';
import { words } from '../words/en.ts';
import type { PageParts } from './pageParts.ts';
import type { PageName } from './route.ts';

/** Where each page comes from; it is fetched when it is first opened. */
const pages: Readonly<Record<PageName, () => Promise<ComponentType<PageParts>>>> = {
  weigh: async () => (await import('../pages/weigh/WeighPage.tsx')).WeighPage,
  disc: async () => (await import('../pages/disc/DiscPage.tsx')).DiscPage,
  head: async () => (await import('../pages/head/HeadPage.tsx')).HeadPage,
  prove: async () => (await import('../pages/prove/ProvePage.tsx')).ProvePage,
  make: async () => (await import('../pages/make/MakePage.tsx')).MakePage,
  fit: async () => (await import('../pages/fit/FitPage.tsx')).FitPage,
  log: async () => (await import('../pages/log/LogPage.tsx')).LogPage,
  review: async () => (await import('../pages/review/ReviewPage.tsx')).ReviewPage,
  explain: async () => (await import('../pages/explain/ExplainPage.tsx')).ExplainPage,
  start: async () => (await import('../pages/start/StartPage.tsx')).StartPage,
  file: async () => (await import('../pages/file/FilePage.tsx')).FilePage,
};

/** One page, fetched. */
export function Page({ page, parts }: { readonly page: PageName; readonly parts: PageParts }) {
  const [Shown, show] = useState<ComponentType<PageParts> | null>(null);
  const isHere = useStore(connection) !== 'lost';
  useEffect(() => {
    // A page that could not be fetched is fetched again when the server is back.
    const failed = (): void => void (connection.get() === 'here' && connection.set('lost'));
    if (Shown === null && isHere) pages[page]().then((component) => show(() => component), failed);
  }, [page, isHere]);
  return Shown === null ? <p>{words.shell.reading}</p> : <Shown {...parts} />;
}
