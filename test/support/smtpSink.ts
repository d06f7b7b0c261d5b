import { createServer, type Socket } from 'node:net';

/** A mail server of this machine that takes every mail and keeps it. */
export interface SmtpSink {
  readonly port: number;
  /** Whole messages as they came. */
  readonly mails: string[];
  /** Logins that were tried without a safe line. [-] */
  readonly logins: string[];
  close(): Promise<void>;
}

function talk(socket: Socket, mails: string[], logins: string[]): void {
  let waiting = '';
  let isData = false;
  socket.write('220 sink ready\r\n');
  socket.on('error', () => {});
  socket.on('data', (chunk) => {
    waiting += chunk.toString('utf8');
    for (;;) {
      const end = isData ? waiting.indexOf('\r\n.\r\n') : waiting.indexOf('\r\n');
      if (end < 0) return;
      const said = waiting.slice(0, end);
      waiting = waiting.slice(end + (isData ? 5 : 2));
      if (isData) {
        mails.push(said);
        isData = false;
        socket.write('250 kept\r\n');
        continue;
      }
      const verb = said.slice(0, 4).toUpperCase();
      if (verb === 'AUTH') logins.push(said);
      if (verb === 'STAR') {
        socket.write('502 no safe line here\r\n');
        continue;
      }
      isData = verb === 'DATA';
      socket.write(isData ? '354 go on\r\n' : verb === 'QUIT' ? '221 bye\r\n' : '250 fine\r\n');
    }
  });
}

/** Starts one on a free port. */
export function smtpSink(): Promise<SmtpSink> {
  const [mails, logins]: [string[], string[]] = [[], []];
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    talk(socket, mails, logins);
  });
  return new Promise((done) => {
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      const close = (): Promise<void> => {
        for (const socket of sockets) socket.destroy();
        return new Promise((ended) => server.close(() => ended()));
      };
      done({ port, mails, logins, close });
    });
  });
}
