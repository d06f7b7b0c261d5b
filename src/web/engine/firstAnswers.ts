/** What a maker has and wants, as the first page asks it. */
export interface FirstAnswers {
  readonly name: string;
  readonly process: 'fdm' | 'laser' | 'film' | 'colour-print' | 'pcb';
  readonly detector: 'photoresistor' | 'phototransistor' | 'slot-pair' | 'reflectance-pair' | 'colour-sensor';
  /** Light sensors at hand. [-], 1..16 */
  readonly sensors: number;
  /** Wished positions of a turn; as many as the sensors tell apart at most. [-] */
  readonly positions: number;
  readonly diameterMm: number;
  readonly boreDiameterMm: number;
}

/** Positions that so many sensors tell apart, one change a step. */
export function positionsOf({ detector, sensors }: Pick<FirstAnswers, 'detector' | 'sensors'>): number {
  return detector === 'colour-sensor' ? 3 ** Math.min(sensors, 4) : 2 ** Math.min(sensors, 10);
}
