/** Words of recording a turn from the port. */
export const turn = {
  title: 'Or record it from the port',
  browser: 'a port that this browser asks for',
  none: 'This browser cannot read a serial port by itself. Open the page with vanewright open on the computer that the controller is plugged into.',
  start: 'Record the turn',
  stop: 'Stop recording',
  lines: (count: number) =>
    `${count} ${count === 1 ? 'line' : 'lines'} so far. Turn the shaft slowly, then stop.`,
  failed: (why: string) => `The port cannot be read: ${why}`,
  away: 'the server does not answer',
};
