/** Units of speed a column may have; those of the wind step. */
export type SpeedColumnUnit = 'm/s' | 'km/h' | 'kt' | 'mph' | 'ft/s';

/** How each unit is written in names of columns. */
export const speedUnits: readonly { readonly unit: SpeedColumnUnit; readonly pattern: RegExp }[] = [
  { unit: 'km/h', pattern: /km[\s_/]?h|kph/ },
  { unit: 'mph', pattern: /mph|mi[\s_/]h/ },
  { unit: 'kt', pattern: /(^|[^a-z])(kts?|kn|knots?|knoten)([^a-z]|$)|knots/ },
  { unit: 'ft/s', pattern: /ft[\s_/]?s|fps/ },
  { unit: 'm/s', pattern: /m[\s_]?\/[\s_]?s|(^|[^a-z])mps|m_s|ms-1|m s-1|mpers|[\s_([]ms[\])]?$/ },
];

/** Metres per second in one of each unit, exact: knot of 1852 m, mile of 1609.344 m, foot of 0.3048 m. [m/s] */
export const M_PER_S_OF: Readonly<Record<SpeedColumnUnit, number>> = {
  'm/s': 1,
  'km/h': 1 / 3.6,
  kt: 1852 / 3600,
  mph: 0.447_04,
  'ft/s': 0.3048,
};
