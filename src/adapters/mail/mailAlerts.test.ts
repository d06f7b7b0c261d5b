import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { smtpSink, type SmtpSink } from '../../../test/support/smtpSink.ts';
import { someAlert } from '../../../test/support/someAlert.ts';
import { mailAlerts } from './mailAlerts.ts';

let sink: SmtpSink;
beforeEach(async () => {
  sink = await smtpSink();
});
afterEach(() => sink.close());
const address = (): string => `smtp://keeper@127.0.0.1:${sink.port}/keeper@example.org?from=vane@example.org`;

describe('an alert by mail', () => {
  it('says in plain words what is up, since when and what to do', async () => {
    const channel = mailAlerts(address(), null);
    await channel.send(someAlert());
    await channel.send(someAlert('cleared'));
    await channel.close();
    expect(sink.mails).toHaveLength(2);
    expect(sink.mails[0]).toContain('From: vane@example.org');
    expect(sink.mails[0]).toContain('To: keeper@example.org');
    expect(sink.mails[0]).toContain('Subject: jetty: Channel 3 always reads 1');
    expect(sink.mails[0]).toContain('Since:   2026-02-03 04:05 UTC');
    expect(sink.mails[0]).toContain('What to do: Check the light of channel 3.');
    expect(sink.mails[1]).toContain('Subject: jetty: over: Channel 3 always reads 1');
    expect(sink.mails[1]).toContain('Until:   2026-02-03 06:05 UTC');
  });

  it('sends no password over a line that anyone can read', async () => {
    const channel = mailAlerts(address(), 'hunter2');
    await expect(channel.send(someAlert())).rejects.toThrow();
    await channel.close();
    expect(sink.logins).toEqual([]);
    expect(sink.mails).toEqual([]);
    expect(channel.name).toBe(`mail through 127.0.0.1:${sink.port}`);
  });
});
