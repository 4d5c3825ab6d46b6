/** The only door of the solver. */

export { statedGap, USUAL_GAP, wantedGap } from './clearance/required.ts';
export { createRodGap, type Place, type RodGap, rodGapInto } from './clearance/rodGap.ts';
export { type Section, tyreSections, wheelSections } from './clearance/section.ts';
export { assemble, type Corner, solve } from './corner.ts';
export type { Failure } from './linkage/assemble.ts';
export { poseRates } from './linkage/rates.ts';
export { Fixed, Slot } from './linkage/slots.ts';
export { createPose, type Outcome, type Pose } from './linkage/solve.ts';
export { createMeasures, MEASURE_KEYS, Measure, type MeasureKey } from './measures/keys.ts';
export { outsideLimits } from './measures/limits.ts';
export { measureInto } from './measures/measure.ts';
export { placeParts, placeRod, placeWithRates, rodPointCount } from './measures/parts.ts';
export {
  type PoseReport,
  poseReport,
  type Reached,
  reportOf,
  type Unreached,
} from './measures/report.ts';
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
