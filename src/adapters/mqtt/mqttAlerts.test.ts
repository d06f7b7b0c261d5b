import { expect, it } from 'vitest';
import { mqttBroker } from '../../../test/support/mqttBroker.ts';
import { someAlert } from '../../../test/support/someAlert.ts';
import { mqttAlerts } from './mqttAlerts.ts';

it('leaves an alert at the broker, where whoever comes later finds it', async () => {
  const broker = await mqttBroker();
  const channel = mqttAlerts(broker.url('boathouse/alerts'), null);
  await channel.send(someAlert());
  await channel.send(someAlert('cleared'));
  const later = await broker.sender();
  const heard = new Promise<[string, unknown]>((done) =>
    later.on('message', (topic, payload) => done([topic, JSON.parse(payload.toString())])),
  );
  await later.subscribeAsync('boathouse/alerts/#');
  expect(await heard).toEqual(['boathouse/alerts/jetty/stuck-channel-channel-3', someAlert('cleared')]);
  await later.endAsync(true);
  await channel.close();
  await broker.stop();
});
