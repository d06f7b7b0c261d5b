export { mqttSource, type MqttOptions } from './mqttSource.ts';
export { mqttAlerts } from './mqttAlerts.ts';
