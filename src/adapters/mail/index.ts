export { mailAlerts } from './mailAlerts.ts';
