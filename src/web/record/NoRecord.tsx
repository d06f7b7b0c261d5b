import { Verdict } from '../parts/Verdict.tsx';
import { connection } from '../server/askServer.ts';
import { useStore } from '../project/store.ts';
import type { PageName } from '../shell/route.ts';
import { words } from '../words/en.ts';

interface NoRecordProps {
  /** A record is open, but nothing is in it. */
  readonly isEmpty: boolean;
  readonly name: string;
  readonly next: PageName;
}

/** What to do where there is no record to show. */
export function NoRecord({ isEmpty, name, next }: NoRecordProps) {
  const { log } = words;
  const isServed = useStore(connection) !== 'none';
  const [title, text] = isEmpty
    ? [log.emptyTitle, log.empty(name)]
    : isServed
      ? [log.noRecordTitle, log.noRecord]
      : [log.noServerTitle, log.noServer];
  const commands = isEmpty
    ? [log.commandLog]
    : isServed
      ? [log.commandOpen]
      : [log.commandLog, log.commandOpen];
  return (
    <>
      <section class="panel">
        <h2>{title}</h2>
        <p>{text}</p>
        <pre tabIndex={0}>{commands.join('\n')}</pre>
      </section>
      <Verdict says="wait" next={next}>
        {log.saysNone}
      </Verdict>
    </>
  );
}
