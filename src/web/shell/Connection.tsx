import { useEffect } from 'preact/hooks';
import { useStore } from '../project/store.ts';
import { connection } from '../server/askServer.ts';
import { keepToken } from '../server/token.ts';
import { words } from '../words/en.ts';
import type { PageParts } from './pageParts.ts';
import './connection.css';

/** Says so when the server does not answer, and keeps the page open while it holds what is saved nowhere. */
export function Connection({ project }: Pick<PageParts, 'project'>) {
  const now = useStore(connection);
  const saving = useStore(project.state, (state) => state.saving);
  useEffect(() => {
    if (saving === 'saved' || !project.isFolder) return;
    const hold = (event: BeforeUnloadEvent): void => event.preventDefault();
    addEventListener('beforeunload', hold);
    return () => removeEventListener('beforeunload', hold);
  }, [saving, project]);
  if (now === 'token') return <TokenForm />;
  if (now !== 'lost') return null;
  return (
    <p class="connection" role="alert">
      <strong>{words.server.lost}</strong> {words.server.lostHint}
    </p>
  );
}

/** Asks for the token that the command printed. */
export function TokenForm({ onToken }: { onToken?(): void }) {
  const { server } = words;
  const take = (event: SubmitEvent): void => {
    event.preventDefault();
    const given = new FormData(event.currentTarget as HTMLFormElement).get('token');
    keepToken(String(given ?? '').trim());
    onToken?.();
  };
  return (
    <form class="connection" onSubmit={take} aria-label={server.tokenTitle}>
      <strong>{server.tokenTitle}</strong> {server.tokenHint}
      <label>
        {server.token}
        <input name="token" type="password" required autocomplete="off" />
      </label>
      <button type="submit">{server.tokenSend}</button>
    </form>
  );
}
