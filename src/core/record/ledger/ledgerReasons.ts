/** What was done to a line or to the whole reading. */
export type LedgerAction = 'dropped' | 'joined' | 'split' | 'moved' | 'guessed' | 'noted';

const row = <A extends LedgerAction>(action: A, what: string) => ({ action, what }) as const;

/** Every reason of the repair ledger: what was done, and why in plain words; docs/record.md says more. */
export const ledgerReasons = {
  rubbish: row('dropped', 'Bytes that are no text, as at power-on or with a wrong serial speed.'),
  'wrong-speed': row('noted', 'Under one line in five could be read: check the serial speed.'),
  'too-long': row('dropped', 'A line longer than any line can be.'),
  'cut-line': row('dropped', 'Part of a line is missing.'),
  'check-failed': row('dropped', 'The check value does not fit: something changed on the way.'),
  'not-a-line': row('dropped', 'Text that is no line of this source, such as the words of another program.'),
  'bad-value': row('dropped', 'A field holds what it cannot hold.'),
  'missing-value': row('dropped', 'A field is empty or one is missing.'),
  'extra-value': row('dropped', 'There are more fields than columns.'),
  'glued-line': row('dropped', 'Two lines ran together, and nothing proves where to part them.'),
  'split-line': row(
    'split',
    'Two lines had run together; their check values or counters prove where to part them.',
  ),
  duplicate: row('dropped', 'The same line again: one is kept.'),
  conflict: row(
    'dropped',
    'Another sample of the same instant with other values: the first is kept; which is right?',
  ),
  'same-second': row(
    'moved',
    'Several rows of one second: the clock shows whole seconds, so they stand a millisecond apart in their order.',
  ),
  'late-line': row(
    'moved',
    'A line that came after lines sent later, through another worker: put where its counter says.',
  ),
  'ready-text': row('noted', 'Words that the program sends when it starts.'),
  'heading-line': row('noted', 'Names of columns.'),
  'columns-changed': row('noted', 'Other columns from here on.'),
  restart: row('noted', 'The controller started again: a new segment begins.'),
  'counter-wrapped': row('moved', 'The counter ran to its end and began again at 0: the time goes on.'),
  'time-went-back': row('noted', 'The time went back without a sign of a restart: a new segment begins.'),
  'host-clock-stepped': row('noted', 'The clock of this machine was set: times are tied to it anew.'),
  gap: row('noted', 'Lines are missing; nothing is filled in.'),
  'clock-not-set': row(
    'noted',
    'The clock showed a time that cannot be: the segment needs a remembered moment.',
  ),
  'time-unknown': row(
    'dropped',
    'No clock and no remembered moment: kept in the raw log until one is given.',
  ),
  'placed-by-moments': row('moved', 'Put in time by remembered moments.'),
  'placed-between': row('guessed', 'Put in time between its neighbours.'),
  'summer-time-twice': row(
    'guessed',
    'This local time came twice that night; told apart by the order of the lines.',
  ),
  'summer-time-missing': row(
    'moved',
    'This local time did not exist that night: the clock had not been put forward.',
  ),
  'local-time': row('moved', 'Local times were turned into UTC.'),
  'label-moved': row('moved', 'Periods labelled by their start are labelled by their end.'),
  'date-order': row('guessed', 'Day and month could be either way round.'),
  'decimal-comma': row('guessed', 'A comma inside numbers was read as a decimal comma.'),
  spreadsheet: row('dropped', 'A spreadsheet has made a date or a power of ten of a number.'),
  'zeros-restored': row('guessed', 'A word had lost the zeros in front.'),
  sentinel: row('noted', 'A number that stands for "not read".'),
  calm: row('noted', 'No wind, so no direction: calm is its own class.'),
  'full-turn': row('moved', 'A heading of 360 or below 0 was brought into the circle.'),
  'heading-codes': row('guessed', 'Headings are numbers of positions, not degrees.'),
  'compass-names': row('noted', 'Headings are names of compass points.'),
  'compass-language': row('guessed', 'O is east in German and west in French, Spanish and Italian.'),
  'speed-unit': row('guessed', 'No unit of speed is named.'),
  'absurd-speed': row('noted', 'Faster than any wind there: kept, with a flag.'),
  'negative-speed': row('dropped', 'Less than nothing, as after a counter was set back.'),
  'empty-bytes': row('dropped', 'Bytes of 0 or 255 in a row, as a power cut leaves them.'),
  'byte-order-mark': row('dropped', 'The mark in front of a Unicode file.'),
  'wide-text': row('noted', 'The file is UTF-16.'),
  'not-utf8': row('noted', 'A line holds bytes that are not UTF-8.'),
  'monitor-times': row('dropped', 'Times that a serial monitor wrote in front of lines.'),
  'left-out-columns': row('noted', 'Columns that are not used here.'),
  'no-layout': row('dropped', 'No sign parts these lines into columns of data.'),
  'moved-out': row('moved', 'Samples were moved into an archive; their 10-minute means are beside it.'),
  'raw-damaged': row('dropped', 'A stretch of the raw log itself cannot be read.'),
} as const satisfies Record<string, { readonly action: LedgerAction; readonly what: string }>;

/** Name of a reason. */
export type LedgerReason = keyof typeof ledgerReasons;
