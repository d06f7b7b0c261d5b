/** Words of the page that shows the instrument file as text. */
export const file = {
  label: 'The instrument file',
  hint: 'YAML: a name, a colon, a value. Every page writes into this text, and keeps your comments.',
  good: 'The file reads well, and the design can be made.',
  bad: (count: number) =>
    count === 1 ? 'One thing is wrong in this file.' : `${count} things are wrong in this file.`,
  wait: 'Reading …',
  line: (line: number) => `Go to line ${line}`,
  status: (line: number, lines: number) => `Line ${line} of ${lines}`,
};
