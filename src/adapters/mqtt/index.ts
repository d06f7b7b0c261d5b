export { mqttSource, type MqttOptions } from './mqttSource.ts';
