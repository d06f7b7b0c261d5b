import { PLASTIC_KG_PER_M3, STEEL_BARS_MM, STEEL_KG_PER_M3, tubeKgPerM, VANE_ARM } from './materials.ts';

/** The fin: its span stands upright. [mm] */
export interface FinSize {
  readonly spanMm: number;
  readonly depthMm: number;
  readonly thicknessMm: number;
}

/** Steel in the nose. [mm] */
export interface SteelBar {
  readonly diameterMm: number;
  readonly lengthMm: number;
}

/** A mass spread evenly along the vane's arm. */
export interface ArmMass {
  readonly kg: number;
  /** From the axis to its middle, the tail positive. [mm] */
  readonly atMm: number;
  /** Extent along the arm. [mm] */
  readonly alongMm: number;
}

/** Sleeve of the fin over the tube: its length as a share of the fin's depth [-], and its wall [mm]. */
export const [SLEEVE_SHARE, SLEEVE_WALL_MM] = [0.8, 1.6];

/** Width of the sleeve, square. [mm] */
export const SLEEVE_WIDTH_MM = VANE_ARM.diameterMm + 2 * SLEEVE_WALL_MM;

/** The nose: wall round the steel, floor below it, and socket for the tube. [mm] */
export const [NOSE_WALL_MM, NOSE_FLOOR_MM, NOSE_SOCKET_MM] = [2.4, 2, 14];

/** From the axis to the tube's front end. [mm] @source own choice: short, since what stands there adds inertia and no hold. */
export const TUBE_FRONT_MM = 50;

/** Longest steel bar against its width. [-] @source own choice: keeps the nose handy. */
const LONGEST_BAR = 4;

/** Front edge of the fin; the wind acts a quarter of its depth behind. [mm] */
function frontOf({ depthMm }: FinSize, armMm: number): number {
  return armMm - depthMm / 4;
}

/** From the axis to the tube's tail end, which is that of the sleeve. [mm] */
export function tailEndMm(fin: FinSize, armMm: number): number {
  return frontOf(fin, armMm) + SLEEVE_SHARE * fin.depthMm;
}

/** Plate and sleeve of a printed fin. @param armMm - To a quarter of the fin's depth. [mm] */
export function finMasses(fin: FinSize, armMm: number): ArmMass[] {
  const front = frontOf(fin, armMm);
  const hole = (Math.PI / 4) * VANE_ARM.diameterMm ** 2;
  const sleeveMm = SLEEVE_SHARE * fin.depthMm;
  const kg = (volumeMm3: number): number => volumeMm3 * 1e-9 * PLASTIC_KG_PER_M3;
  return [
    {
      kg: kg(fin.spanMm * fin.depthMm * fin.thicknessMm),
      atMm: front + fin.depthMm / 2,
      alongMm: fin.depthMm,
    },
    { kg: kg((SLEEVE_WIDTH_MM ** 2 - hole) * sleeveMm), atMm: front + sleeveMm / 2, alongMm: sleeveMm },
  ];
}

/** The tube from its front to the end of the sleeve. @param armMm - To a quarter of the fin's depth. [mm] */
export function tubeMass(fin: FinSize, armMm: number): ArmMass {
  const tail = tailEndMm(fin, armMm);
  const alongMm = tail + TUBE_FRONT_MM;
  return { kg: (VANE_ARM.kgPerM * alongMm) / 1000, atMm: (tail - TUBE_FRONT_MM) / 2, alongMm };
}

/** From the axis to the middle of the steel, which begins beyond the tube's end and the floor. [mm] */
export function noseMiddleMm({ lengthMm }: SteelBar): number {
  return TUBE_FRONT_MM + NOSE_FLOOR_MM + lengthMm / 2;
}

/** Kilograms a metre of the nose: where the steel is, and where the tube ends. [kg/m] */
function noseKgPerM(diameterMm: number): { filled: number; socket: number } {
  const outer = diameterMm + 2 * NOSE_WALL_MM;
  const shell = tubeKgPerM(outer, diameterMm, PLASTIC_KG_PER_M3);
  return {
    filled: shell + tubeKgPerM(diameterMm, 0, STEEL_KG_PER_M3),
    socket: tubeKgPerM(outer, VANE_ARM.diameterMm, PLASTIC_KG_PER_M3),
  };
}

/** Steel with its shell, floor, and socket. n = 3 */
export function noseMasses(bar: SteelBar): ArmMass[] {
  const { filled, socket } = noseKgPerM(bar.diameterMm);
  const floor = tubeKgPerM(bar.diameterMm + 2 * NOSE_WALL_MM, 0, PLASTIC_KG_PER_M3);
  const mass = (kgPerM: number, alongMm: number, atMm: number): ArmMass => ({
    kg: (kgPerM * alongMm) / 1000,
    atMm: -atMm,
    alongMm,
  });
  return [
    mass(filled, bar.lengthMm, noseMiddleMm(bar)),
    mass(floor, NOSE_FLOOR_MM, TUBE_FRONT_MM + NOSE_FLOOR_MM / 2),
    mass(socket, NOSE_SOCKET_MM, TUBE_FRONT_MM - NOSE_SOCKET_MM / 2),
  ];
}

/** Moment about the axis. [kg mm] @source Σ m x */
export function momentOf(masses: readonly ArmMass[]): number {
  return masses.reduce((sum, { kg, atMm }) => sum + kg * atMm, 0);
}

/** Inertia about the upright axis. [kg m²] @source Σ m (x² + l²/12), thin bodies along the arm. */
export function inertiaOf(masses: readonly ArmMass[]): number {
  return masses.reduce((sum, { kg, atMm, alongMm }) => sum + kg * (atMm ** 2 + alongMm ** 2 / 12), 0) * 1e-6;
}

/**
 * Steel bar that balances a tail, the thinnest that is no more than four times as long as wide.
 *
 * @param tailMoment - Moment to be balanced. [kg mm]
 * @returns The bar, of length 0 where the empty nose is heavy enough; `null` where none in the table is.
 * @source k L (f + L/2) = M, with k the nose's mass a length and f where the steel begins: L = √(f² + 2 M / k) - f.
 * @check src/core/make/vaneParts/vaneParts.test.ts (balance of the printed meshes)
 */
export function weightFor(tailMoment: number): SteelBar | null {
  for (const diameterMm of STEEL_BARS_MM) {
    const rest = tailMoment + momentOf(noseMasses({ diameterMm, lengthMm: 0 }));
    const from = TUBE_FRONT_MM + NOSE_FLOOR_MM;
    const perMm = noseKgPerM(diameterMm).filled / 1000;
    const lengthMm = rest <= 0 ? 0 : Math.sqrt(from ** 2 + (2 * rest) / perMm) - from;
    if (lengthMm <= LONGEST_BAR * diameterMm) return { diameterMm, lengthMm };
  }
  return null;
}
