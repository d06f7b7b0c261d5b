/** One kind of ground. */
export interface GroundKind {
  readonly name: string;
  /** Roughness length. [m] */
  readonly roughnessM: number;
  /** Shear exponent of the power law. [-] */
  readonly shearExponent: number;
}

/**
 * Roughness length [m] and shear exponent [-] by kind of ground, smoothest first.
 *
 * Open sea is printed as 0.0001 m to 0.003 m; the smooth end is kept here.
 *
 * @source P. Jain, Wind Energy Engineering, Table 3-5.
 * @check test/published/jain-weibull/profile.test.ts
 */
export const groundKinds: readonly GroundKind[] = [
  { name: 'open sea', roughnessM: 0.0001, shearExponent: 0.08 },
  { name: 'runway or mown grass', roughnessM: 0.0024, shearExponent: 0.11 },
  { name: 'open farmland', roughnessM: 0.03, shearExponent: 0.15 },
  { name: 'farmland with hedges 1250 m apart', roughnessM: 0.055, shearExponent: 0.17 },
  { name: 'farmland with hedges 500 m apart', roughnessM: 0.1, shearExponent: 0.19 },
  { name: 'farmland with hedges 250 m apart', roughnessM: 0.2, shearExponent: 0.21 },
  { name: 'village or forest', roughnessM: 0.4, shearExponent: 0.25 },
  { name: 'city', roughnessM: 0.8, shearExponent: 0.31 },
  { name: 'city with high buildings', roughnessM: 1.6, shearExponent: 0.39 },
];
