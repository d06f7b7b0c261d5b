import type { AlertChannel } from '../../ports/index.ts';

/** An answer must come within this. [ms] */
const ANSWER_MS = 10_000;

/** Posts alerts as JSON; only host and port are shown, since the rest of an address may be a secret. */
export function webhookAlerts(url: string): AlertChannel {
  const name = `webhook at ${new URL(url).host}`;
  return {
    name,
    async send(alert) {
      const response = await fetch(url, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(alert),
        signal: AbortSignal.timeout(ANSWER_MS),
        redirect: 'error',
      });
      await response.arrayBuffer();
      if (!response.ok) throw new Error(`it answered ${response.status}`);
    },
    async close() {},
  };
}
