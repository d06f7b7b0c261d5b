export { holdsNotch } from './check/mount.ts';
export { LARGEST_DISC_MM } from './check/usableSizes.ts';
export type { DiscPlan, TrackPlan } from './discPlan.ts';
export type {
  Bore,
  Brightness,
  DiscForm,
  DiscSpec,
  Drawn,
  HubSpec,
  Process,
  RingSector,
  StripSpec,
} from './discSpec.ts';
export { discAreaMm2 } from './draw/discArea.ts';
export { drawDisc } from './draw/drawDisc.ts';
export { AXIS, sheetPoint } from './draw/sheetPoint.ts';
export type { Pen, Point } from './pen.ts';
export { materialGrid } from './pieces/materialGrid.ts';
export { columnSpanDeg, rowCount, type PolarGrid } from './pieces/polarGrid.ts';
export { planDisc } from './planDisc.ts';
export type { RibCost } from './pieces/ribCost.ts';
export { processDefaults, thicknessDefaultsMm } from './processDefaults.ts';
export { drawnOf, formOf, isPierced, possibleForms } from './form.ts';
export { boreCircleMm, boreSides, flatHalfAngleDeg, widenedBore, type BoreSide } from './layout/bore.ts';
export { discLayers, levelColours, type DiscLayer, type Operation } from './draw/layers.ts';
export {
  blankGrid,
  groundLevel,
  levelCountOf,
  levelGrid,
  steppedGrid,
  windowGrid,
} from './pieces/materialGrid.ts';
export { fieldOf, type Field } from './pieces/field.ts';
export type { StripLayout } from './discPlan.ts';
export { isWindow } from './layout/windows.ts';
export { contrastOf, MOST_LEAK, type Contrast } from './measured/contrast.ts';
export {
  correctionsFrom,
  drawnBoreMm,
  drawnHoleMm,
  drawnIslandMm,
  drawnPlaceMm,
  measuredProcess,
} from './measured/corrections.ts';
export {
  COUPON_BAR_MM,
  COUPON_MARK_MM,
  UNMEASURED,
  type ContrastReadings,
  type CouponReadings,
} from './measured/couponReadings.ts';
export { readingProblems } from './measured/readingProblems.ts';
export { balanceOf, type Balance, type Counterweight } from './balance/balance.ts';
export { densityOf, materials, type Material } from './materials.ts';
export { faultyDisc, type FaultyDisc, type PlacedFault } from './faultPlaces.ts';
export { discPlace, stripPlace, type FaultPlace } from './check/fault.ts';
export { roundSheet, type Sheet } from './draw/sheet.ts';
export { withAllowance, type Allowance } from './allowance.ts';
