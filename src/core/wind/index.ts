export { aviationWind, type AviationWind, type TenMinutes } from './aviation/aviationWind.ts';
export { roundedHeading } from './aviation/roundedHeading.ts';
export { windGroup } from './aviation/windGroup.ts';
export { HeadingSum } from './direction/headingSum.ts';
export { meanHeading, type MeanHeading } from './direction/meanHeading.ts';
export { smallestArc, type Arc } from './direction/smallestArc.ts';
export { circularSpread, exactSpread, yamartinoSpread } from './direction/spread.ts';
export { unwrappedMean, UnwrappedSum, type UnwrappedMean } from './direction/unwrappedSum.ts';
export { vectorMean, WindVectorSum, type VectorMean } from './direction/windVectorSum.ts';
export { gumbelFit, gumbelReturn, type Gumbel } from './distribution/gumbel.ts';
export {
  airDensity,
  powerDensity,
  STANDARD_AIR_KG_PER_M3,
  type PowerDensity,
  type PowerDensityBasis,
} from './distribution/powerDensity.ts';
export { returnLevel, type ReturnLevel, type YearMaximum } from './distribution/returnLevel.ts';
export { SpeedCounts } from './distribution/speedCounts.ts';
export {
  weibullMode,
  weibullMoment,
  weibullQuantile,
  weibullShareBelow,
  type Weibull,
} from './distribution/weibull.ts';
export { weibullFit, type WeibullFit, type WeibullFitChoice } from './distribution/weibullFit.ts';
export {
  cupCalibration,
  cupFactor,
  speedCapOfQuiet,
  speedOfRate,
  type CupCalibration,
} from './dynamics/cupCalibration.ts';
export { cupRecovery, distanceConstant } from './dynamics/cupResponse.ts';
export { lineAt, linearRegression, type LinearFit } from './dynamics/linearRegression.ts';
export { vaneMotion, vaneRanges, type Release, type VaneMotion } from './dynamics/releaseTest.ts';
export {
  dampingFromOvershoot,
  naturalWavelength,
  overshootFromDamping,
  releasedVane,
  wavelengthOverDelay,
} from './dynamics/vaneResponse.ts';
export { calmThreshold, isCalm, REPORTED_CALM_M_PER_S } from './period/calm.ts';
export { columnBytes, columnsOfBytes } from './period/columnBytes.ts';
export {
  completeness,
  PERIOD_COMPLETE,
  QUARTER_COMPLETE,
  yearIsComplete,
  type Completeness,
  type Counted,
} from './period/completeness.ts';
export { CoverageCalendar, type CoveredDay } from './period/coverageCalendar.ts';
export { hourHeading, hourSpread, type QuarterHeading } from './period/hourFromQuarters.ts';
export { expectedReadings, periodEnd, TEN_MINUTES_MS } from './period/periodClock.ts';
export { PeriodStream, windPeriods, type PeriodRule, type WindPeriod } from './period/periodStream.ts';
export { PeriodSum, type PeriodSummary } from './period/periodSum.ts';
export { READ_HEADING, READ_SPEED, requireColumns, type SampleColumns } from './period/sampleColumns.ts';
export type { WindSample } from './period/windSample.ts';
export type { ProfileSpeed } from './profile/heights.ts';
export { logProfile, type Ground } from './profile/logProfile.ts';
export { powerProfile, shearExponent } from './profile/powerProfile.ts';
export { groundKinds, type GroundKind } from './profile/roughness.ts';
export {
  screenHours,
  screenPeriod,
  type ScreenedPeriod,
  type ScreenedSpread,
} from './quality/periodScreen.ts';
export {
  flagsOf,
  qualityBits,
  qualityCodes,
  type QualityFlag,
  type QualitySpan,
} from './quality/qualityFlag.ts';
export { sampleLimits, type SampleLimits } from './quality/sampleLimits.ts';
export { SampleScreen, screenSamples } from './quality/sampleScreen.ts';
export type { Caution } from './refusal.ts';
export { compassPoint, compassPoints, type PointCount } from './rose/compassPoint.ts';
export { roseOf, type Petal, type Rose, type RoseShare } from './rose/rose.ts';
export { RoseSum, type RoseLayout } from './rose/roseSum.ts';
export { sectorCentreDeg, sectorShares, type Sectors, type SectorShare } from './rose/sectors.ts';
export { equalWeights, type EqualWeight } from './rose/stratum.ts';
export { beaufortForce, beaufortScale, type BeaufortForce } from './speed/beaufort.ts';
export { GUST_WINDOW_MS, GustSum, slidingGust, type Gust, type GustRule } from './speed/gustSum.ts';
export { speedMoments, SpeedSum, type SpeedMoments } from './speed/speedSum.ts';
export { speedFrom, speedIn, speedUnits, type SpeedUnit } from './speed/speedUnit.ts';
export { gustFactor, turbulenceIntensity, windRunKm } from './speed/turbulence.ts';
export { blockOf, groupOf, GROUPS } from './uncertainty/block.ts';
export { BlockMeanSum, type BlockMean } from './uncertainty/blockMean.ts';
export { shareInterval, type Interval } from './uncertainty/interval.ts';
export { jackknifeError } from './uncertainty/jackknife.ts';
export { CONFIDENCE, studentFactor } from './uncertainty/student.ts';
