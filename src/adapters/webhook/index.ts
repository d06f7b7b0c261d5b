export { webhookAlerts } from './webhookAlerts.ts';
