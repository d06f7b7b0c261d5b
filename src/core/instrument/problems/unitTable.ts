/** One way to write a quantity. */
export interface UnitName {
  /** How it is shown, and other ways a maker writes it. */
  readonly names: readonly [string, ...string[]];
  /** How many house units one of these is. [-] */
  readonly factor: number;
}

const length = (scale: number): readonly UnitName[] => [
  { names: ['um', 'µm', 'μm', 'micron', 'microns'], factor: 1e-6 * scale },
  { names: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], factor: 1e-3 * scale },
  { names: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'], factor: 1e-2 * scale },
  { names: ['m', 'metre', 'metres', 'meter', 'meters'], factor: scale },
  { names: ['inch', 'in', 'inches', '"', '″'], factor: 0.0254 * scale },
  { names: ['ft', 'foot', 'feet', "'"], factor: 0.3048 * scale },
];
const time = (scale: number): readonly UnitName[] => [
  { names: ['us', 'µs', 'μs', 'microseconds'], factor: 1e-6 * scale },
  { names: ['ms', 'milliseconds'], factor: 1e-3 * scale },
  { names: ['s', 'sec', 'second', 'seconds'], factor: scale },
  { names: ['min', 'minute', 'minutes'], factor: 60 * scale },
];

/** House units and what they are mistaken for. @source SI brochure; 1 inch = 25.4 mm by definition; 1 rpm = 6 deg/s */
export const unitTable: Readonly<Record<string, readonly UnitName[]>> = {
  mm: length(1000),
  m: length(1),
  nm: [
    { names: ['nm', 'nanometre', 'nanometres', 'nanometer', 'nanometers'], factor: 1 },
    { names: ['um', 'µm', 'μm', 'micron', 'microns'], factor: 1000 },
  ],
  ms: time(1000),
  us: time(1e6),
  deg: [
    { names: ['deg', '°', 'degree', 'degrees'], factor: 1 },
    { names: ['rad', 'radian', 'radians'], factor: 180 / Math.PI },
    { names: ['turn', 'turns', 'rev'], factor: 360 },
  ],
  'deg/s': [
    { names: ['deg/s', '°/s', 'dps'], factor: 1 },
    { names: ['rad/s'], factor: 180 / Math.PI },
    { names: ['rpm', '1/min', 'rev/min'], factor: 6 },
    { names: ['turns/s', 'rev/s', 'rps'], factor: 360 },
  ],
  ohm: [
    { names: ['ohm', 'Ω', 'Ω', 'ohms', 'R'], factor: 1 },
    { names: ['kohm', 'kΩ', 'kΩ', 'k', 'K'], factor: 1e3 },
    { names: ['Mohm', 'MΩ', 'MΩ', 'M'], factor: 1e6 },
  ],
  mA: [
    { names: ['uA', 'µA', 'μA'], factor: 1e-3 },
    { names: ['mA', 'ma'], factor: 1 },
    { names: ['A'], factor: 1e3 },
  ],
  mW: [
    { names: ['uW', 'µW', 'μW'], factor: 1e-3 },
    { names: ['mW', 'mw'], factor: 1 },
    { names: ['W'], factor: 1e3 },
  ],
  V: [
    { names: ['mV'], factor: 1e-3 },
    { names: ['V', 'v', 'volt', 'volts'], factor: 1 },
  ],
  percent: [
    { names: ['percent', '%'], factor: 1 },
    { names: ['as a fraction'], factor: 100 },
  ],
  '-': [
    { names: ['%', 'percent'], factor: 0.01 },
    { names: ['-'], factor: 1 },
  ],
  counts: [{ names: ['counts', 'count'], factor: 1 }],
  'bit/s': [
    { names: ['bit/s', 'baud', 'bps', 'Bd'], factor: 1 },
    { names: ['kbit/s', 'kbaud', 'kbps'], factor: 1e3 },
  ],
};
