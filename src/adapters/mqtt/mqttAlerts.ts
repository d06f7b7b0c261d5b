import mqtt from 'mqtt';
import type { AlertChannel } from '../../ports/index.ts';

/** The broker must have taken an alert within this. [ms] */
const TAKEN_MS = 10_000;

/** Signs that have a meaning in topics. */
const topicPart = (text: string): string => text.replace(/[+#/\u0000]/g, '-');

/**
 * Publishes alerts to `TOPIC/station/fault`, kept by the broker, so that whoever comes later knows what is up.
 *
 * @param url - `mqtt://user@host:1883/topic`
 * @param password - Of that user, from the environment; `null` = none.
 */
export function mqttAlerts(url: string, password: string | null): AlertChannel {
  const address = new URL(url);
  const topic = decodeURIComponent(address.pathname.slice(1));
  const client = mqtt.connect(`${address.protocol}//${address.host}`, {
    protocolVersion: 5,
    ...(address.username === '' ? {} : { username: decodeURIComponent(address.username) }),
    ...(password === null ? {} : { password }),
  });
  // The client tries again by itself; an alert that was not taken is told by `send`.
  client.on('error', () => {});
  return {
    name: `broker at ${address.host}`,
    async send(alert) {
      const place = `${topic}/${topicPart(alert.station)}/${topicPart(alert.fault)}`;
      const sent = client.publishAsync(place, JSON.stringify(alert), { qos: 1, retain: true });
      let timer: ReturnType<typeof setTimeout> | undefined;
      const late = new Promise<never>((_, failed) => {
        timer = setTimeout(() => failed(new Error('the broker does not answer')), TAKEN_MS);
      });
      try {
        await Promise.race([sent, late]);
      } finally {
        clearTimeout(timer);
      }
    },
    close: () => client.endAsync(true),
  };
}
