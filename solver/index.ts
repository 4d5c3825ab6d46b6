/** The only door of the solver. */

export { align } from './align/align.ts';
export * from './align/alignment.ts';
export { fixedAxisCaster, ruleFactor, smallAngleCaster } from './align/casterRead.ts';
export { type CasterDifference, type CasterSweep, casterSweep } from './align/casterSweep.ts';
export { casterReasons } from './align/casterWords.ts';
export * from './align/hardware.ts';
export { type MovedMeasure, movedBySettings } from './align/moved.ts';
export type { AnglePoint } from './align/outline.ts';
export { type ReachableRegion, reachableRegion, reachableRegionInSteps } from './align/region.ts';
export type { SteerEnd, Steered } from './align/steered.ts';
export { hardwareWords, stepWords } from './align/workWords.ts';
export { certify, createProof, type Proof, stepProof } from './certify/proof.ts';
export { type CertifiedRange, certifiedRange } from './certify/range.ts';
export { type PairResult, type Verdict, verdictOf } from './certify/result.ts';
export {
  createMeshGap,
  type MeshGap,
  type MeshPatch,
  type MeshSurface,
  type MeshSurfaces,
} from './clearance/mesh.ts';
export { createPairGap, type PairGap, pairGapInto } from './clearance/pairGap.ts';
export {
  type UnwatchedPair,
  unwatchedPairs,
  type WatchedPair,
  watchedPairs,
} from './clearance/pairs.ts';
export { statedGap, USUAL_GAP, wantedGap } from './clearance/required.ts';
export { createRodGap, type Place, type RodGap, rodGapInto } from './clearance/rodGap.ts';
export { type Section, tyreSections, wheelSections } from './clearance/section.ts';
export {
  type BoxShape,
  type ChainShape,
  type ClearancePart,
  type Extent,
  frameSlots,
  type LineEnd,
  type LineShape,
  type MeshShape,
  type RevolvedShape,
  type Shape,
  type ShapeBody,
  shapesOf,
} from './clearance/shapes.ts';
export type { Strand } from './clearance/strands.ts';
export { type WheelPlace, wheelPlace } from './clearance/wheelPlace.ts';
export { comparisonCsv, type NamedDesign } from './compare/csv.ts';
export { differenceWords } from './compare/differences.ts';
export { type ComparedKey, type MeasuredDesign, measureDesign } from './compare/measured.ts';
export {
  COMPARED_ROWS,
  type ComparedRow,
  comparedCell,
  GROUP_TITLES,
  unreachedWords,
} from './compare/rows.ts';
export { STATION_LABELS, STATIONS, type Station, stationPlace } from './compare/stations.ts';
export { assemble, assembleNear, type Corner, solve } from './corner.ts';
export { canBeCured } from './cure/aim.ts';
export * from './cure/cure.ts';
export { curesInSteps } from './cure/cures.ts';
export { movesBetween, surveyInSteps, worsenedBetween } from './cure/effects.ts';
export {
  type ArmFigure,
  type ArmLeg,
  type ArmName,
  armFigure,
  type CupTilt,
} from './drafting/arm.ts';
export {
  type Allowances,
  type CutPiece,
  cutList,
  NO_ALLOWANCES,
  type PieceName,
} from './drafting/cutList.ts';
export { type RodFigure, rodFigure } from './drafting/rod.ts';
export type { TubeBend } from './drafting/tube.ts';
export type { Input, InputGroup } from './inputs/input.ts';
export { inputOf, inputsOf } from './inputs/list.ts';
export { GRADES, type Grade, inputSigma, inputSigmas, withGrade } from './inputs/sigma.ts';
export { applyInputs, inputValue, inputValues, withInput } from './inputs/value.ts';
export type { Failure } from './linkage/linkage.ts';
export { poseRates } from './linkage/rates.ts';
export { Fixed, Slot } from './linkage/slots.ts';
export { createPose, type Outcome, type Pose } from './linkage/solve.ts';
export {
  AXLE_KEYS,
  type Axle,
  type AxleKey,
  AxleMeasure,
  axleInto,
  createAxle,
} from './measures/axle.ts';
export { EXPLANATIONS } from './measures/explanations.ts';
export { csvField, csvText, FILE_UNITS } from './measures/fileUnits.ts';
export { createMeasures, MEASURE_KEYS, Measure, type MeasureKey } from './measures/keys.ts';
export { isOutside, type Limit, limitedValue, limitsOf, outsideLimits } from './measures/limits.ts';
export { measureInto } from './measures/measure.ts';
export { placeParts, placeRod, placeWithRates, rodPointCount } from './measures/parts.ts';
export {
  type PoseReport,
  poseReport,
  type Reached,
  reportOf,
  type Unreached,
} from './measures/report.ts';
export {
  inWords,
  MEASURE_TABLE,
  type MeasureGroup,
  type MeasureRow,
  measureRow,
  missingParts,
  type Sense,
  type UnitKind,
} from './measures/table.ts';
export type { MeasuredUnit } from './model/measured.ts';
export type * from './model/model.ts';
export {
  formatModelError,
  type ModelError,
  type ModelResult,
  parseModel,
  readModel,
} from './model/parse.ts';
export { escaped, quoted, WHOLE_FILE } from './model/read/failure.ts';
export { LARGEST_NUMBER } from './model/read/values.ts';
export { writeModel } from './model/write.ts';
export {
  EFFECT_PLACES,
  type Effect,
  type EffectPlace,
  type Effects,
  effectsOf,
  type Pair,
} from './moving/effects.ts';
export { type Movable, movableLengths, movablePoints, moved } from './moving/move.ts';
export {
  ANSWER_KEYS,
  type AnswerKey,
  answerPlace,
  createSensitivities,
  type PoseSensitivity,
  type Sensitivities,
  sensitivityAt,
  slopeOf,
  type ToeSensitivity,
  toeSensitivityAt,
} from './sensitivity/sensitivity.ts';
export { firstStop, stopCurve, stopCurveInSteps } from './stops/curve.ts';
export { cycleGrid, cycleHeights, cycleRacks } from './stops/cycle.ts';
export { extremesInSteps, extremesOf } from './stops/extremes.ts';
export { firstStops, firstStopsInSteps } from './stops/firstStops.ts';
export { partWords } from './stops/limitWords.ts';
export {
  type Habits,
  type Margin,
  type MarginKind,
  type MarginUnit,
  type Standing,
  standingOf,
  USUAL_HABITS,
} from './stops/margin.ts';
export {
  createMargins,
  type MarginOptions,
  type Margins,
  marginsInto,
  marginsOf,
} from './stops/margins.ts';
export { usableRegion, usableRegionInSteps } from './stops/region.ts';
export type * from './stops/results.ts';
export { allSteps, type Steps } from './stops/steps.ts';
export {
  type WantedRow,
  type WantedTravel,
  type Wish,
  wantedTravel,
  wantedTravelInSteps,
  withWanted,
} from './stops/wanted.ts';
export {
  type Again,
  betterSigma,
  measureAgain,
  type Spoiler,
  type SpoilingPoint,
  USUAL_BETTER,
} from './uncertainty/again.ts';
export { type Band, bandInSteps, bandOf } from './uncertainty/band.ts';
export { decimalsKnown, numericalTolerance } from './uncertainty/digits.ts';
export type { Histogram } from './uncertainty/histogram.ts';
export {
  combined,
  type Knowledge,
  type KnownAnswer,
  type KnownKey,
  knowledgeAt,
  knowledgeOf,
  TOE_CHANGE_KEYS,
  type ToeChangeKey,
  uncertaintiesOf,
} from './uncertainty/knowledge.ts';
export {
  type DrawnAnswer,
  type MonteCarlo,
  type MonteCarloOptions,
  monteCarlo,
  monteCarloInSteps,
  USUAL_DRAWS,
} from './uncertainty/monteCarlo.ts';
export {
  type Best,
  bestsInSteps,
  type Known,
  knownOf,
  placeTold,
  presentTold,
  type Told,
} from './whereabouts/answer.ts';
export type { Room } from './whereabouts/box.ts';
export { usualRate } from './whereabouts/curve.ts';
export type { Fact } from './whereabouts/facts.ts';
export { type Ideal, type IdealLine, idealOf } from './whereabouts/ideal.ts';
export { type Picture, pictureInSteps, thinned } from './whereabouts/picture.ts';
export {
  AIMS,
  type Aim,
  angleOf,
  PLANE_AXES,
  PLANES,
  type Plane,
  type Question,
  RATE_LENGTH,
  type Reach,
  SUBJECTS,
  type Subject,
  usualStretch,
} from './whereabouts/question.ts';
export { placeOf, withPlace, withPlaceWritten } from './whereabouts/subject.ts';
