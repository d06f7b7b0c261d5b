import { VanewrightError } from '../../../core/error/index.ts';
import type { AlertChannel } from '../../../ports/index.ts';

/** Variables that passwords come from; they are written nowhere. */
const SMTP_PASSWORD = 'VANEWRIGHT_SMTP_PASSWORD';
const MQTT_PASSWORD = 'VANEWRIGHT_MQTT_PASSWORD';

function refused(code: string, what: string, got: string, fix: string): VanewrightError {
  const allowed =
    'http(s)://host/path, mqtt(s)://user@host/topic or smtp(s)://user@host/to@example.org?from=vane@example.org';
  return new VanewrightError({ code, what, where: '--alert', got, allowed, fix });
}

/** Whatever may be secret in an address is left out. */
const shown = (text: string): string =>
  text
    .replace(/\/\/[^@/]*@/, '//***@')
    .split('?')[0]!
    .slice(0, 60);

/**
 * Where a maker wants alerts to go; the packages behind it are loaded only now.
 *
 * @throws `log/alert-address`, `log/alert-secret`
 */
export async function openAlerts(text: string, env: NodeJS.ProcessEnv): Promise<AlertChannel> {
  const kind = /^(https?|mqtts?|smtps?):\/\/./.exec(text)?.[1];
  if (kind === undefined || !URL.canParse(text)) {
    throw refused(
      'log/alert-address',
      'It is not clear where alerts go.',
      shown(text),
      'Use --alert mqtt://localhost/alerts',
    );
  }
  const { pathname, password } = new URL(text);
  if (kind.startsWith('http')) {
    const { webhookAlerts } = await import('../../../adapters/webhook/index.ts');
    return webhookAlerts(text);
  }
  const variable = kind.startsWith('smtp') ? SMTP_PASSWORD : MQTT_PASSWORD;
  if (password !== '') {
    const what = 'A password in the address would stand in the list of processes and in the shell history.';
    throw refused(
      'log/alert-secret',
      what,
      shown(text),
      `Put it into the variable ${variable} and leave it out here.`,
    );
  }
  if (pathname.length < 2 || (kind.startsWith('smtp') && !pathname.includes('@'))) {
    const what = kind.startsWith('smtp')
      ? 'The address names nobody to write to.'
      : 'The address names no topic.';
    const fix = kind.startsWith('smtp') ? 'Add /you@example.org to it.' : 'Add /alerts to it.';
    throw refused('log/alert-address', what, shown(text), fix);
  }
  const secret = env[variable] ?? null;
  if (kind.startsWith('smtp')) {
    const { mailAlerts } = await import('../../../adapters/mail/index.ts');
    return mailAlerts(text, secret);
  }
  const { mqttAlerts } = await import('../../../adapters/mqtt/index.ts');
  return mqttAlerts(text, secret);
}
