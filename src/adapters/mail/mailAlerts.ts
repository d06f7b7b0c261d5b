import { createTransport } from 'nodemailer';
import type { Alert, AlertChannel } from '../../ports/index.ts';

/** Waiting for the mail server. [ms] */
const ANSWER_MS = 20_000;

const instant = (atMs: number): string =>
  `${new Date(atMs).toISOString().slice(0, 16).replace('T', ' ')} UTC`;

function textOf({ state, station, finding }: Alert): string {
  const { title, evidence, todo, sinceMs, untilMs, daysLeft } = finding;
  return [
    state === 'raised' ? title : `Over: ${title}`,
    '',
    `Station: ${station}`,
    `Since:   ${instant(sinceMs)}`,
    ...(untilMs === null ? [] : [`Until:   ${instant(untilMs)}`]),
    ...(daysLeft === null || state === 'cleared' ? [] : [`Left:    about ${Math.round(daysLeft)} days`]),
    '',
    evidence,
    ...(state === 'raised' ? ['', `What to do: ${todo}`] : []),
    '',
  ].join('\n');
}

/**
 * Sends alerts as plain mail.
 *
 * @param url - `smtp://user@host:587/to@example.org?from=vane@example.org`; `smtps` for a connection that begins safe.
 * @param password - Of that user, from the environment; `null` = none. It is kept nowhere.
 */
export function mailAlerts(url: string, password: string | null): AlertChannel {
  const address = new URL(url);
  const to = decodeURIComponent(address.pathname.slice(1));
  const from = address.searchParams.get('from') ?? to;
  const secure = address.protocol === 'smtps:';
  const transport = createTransport({
    host: address.hostname,
    port: Number(address.port || (secure ? 465 : 587)),
    secure,
    // A password never goes over a line that anyone can read.
    ...(password === null || secure ? {} : { requireTLS: true }),
    ...(password === null ? {} : { auth: { user: decodeURIComponent(address.username), pass: password } }),
    connectionTimeout: ANSWER_MS,
    greetingTimeout: ANSWER_MS,
    socketTimeout: ANSWER_MS,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  return {
    name: `mail through ${address.host}`,
    async send(alert) {
      const subject = `${alert.station}: ${alert.state === 'raised' ? '' : 'over: '}${alert.finding.title}`;
      await transport.sendMail({ from, to, subject, text: textOf(alert) });
    },
    async close() {
      transport.close();
    },
  };
}
