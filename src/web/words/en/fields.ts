/** Short names of fields; the meaning, range and unit come from the schema of the file. */
export const fields = {
  names: {
    name: 'Name',
    'need.positions': 'Positions of a turn',
    'need.accuracyDeg': 'Accepted error',
    'need.turnRateDegPerS': 'Fastest turn',
    'need.wantedYield': 'Wanted yield',
    'disc.code': 'Code',
    'disc.diameterMm': 'Disc diameter',
    'disc.hubDiameterMm': 'Hub diameter',
    'disc.thicknessMm': 'Thickness',
    'disc.webMm': 'Ring between tracks',
    'disc.rimMm': 'Rim',
    'disc.process': 'Made by',
    'disc.bore.diameterMm': 'Bore diameter',
  } as Readonly<Record<string, string>>,
  range: (low: string, high: string, unit: string) => `${low} to ${high}${unit}`,
  notNumber: (text: string) => `“${text}” is not a number. Write digits alone, such as 12 or 0.5.`,
  notWhole: 'Only whole numbers count here.',
  outside: (range: string) => `Allowed: ${range}.`,
  byDefault: (rule: string) => `If left out: ${rule}.`,
  more: 'What is this?',
};
