/** Optional parts and numbers of a model: what can be added with believable values, and what can be taken away. */
import type { Model } from '../../../solver/index.ts';
import { wheelDisc, wheelSection } from '../../../solver/model/rim.ts';
import { tyreDimensions } from '../../../solver/model/tyre.ts';
import { axis, inside, listed, number, type Part, type PartMaker, single } from './part.ts';
import { valueAt, withoutValue, withValue } from './place.ts';
import {
  withAntiRollBar,
  withBrake,
  withCoilover,
  withCrossTube,
  withHalfShaft,
  withKnuckleTube,
  withLegBend,
  withRail,
  withSteeringLimit,
  withStrap,
  withTargets,
  withTieRodBend,
  withWeights,
} from './starters.ts';

function cam(arm: 'lowerArm' | 'upperArm', which: 'front' | 'rear'): readonly PartMaker[] {
  const path = `${arm}.${which}Cam`;
  return [
    unless(
      `${arm}.${which}Shim`,
      single(path, `${which} cam`, (model) => withValue(model, path, { throw: 7 })),
    ),
    inside(
      path,
      single(`${path}.slot`, `${which} cam’s slot direction`, (model) =>
        withValue(model, `${path}.slot`, [0, 1, 0]),
      ),
    ),
    inside(path, number(`${path}.marks`, `${which} cam’s marks`, 12)),
  ];
}

/** A maker for hardware that shares its place with another kind: it can be added only while the other is not there. */
function unless(other: string, maker: PartMaker): PartMaker {
  return (model) => (valueAt(model, other) === undefined ? maker(model) : null);
}

function shim(which: 'front' | 'rear'): readonly PartMaker[] {
  const path = `upperArm.${which}Shim`;
  return [
    unless(
      `upperArm.${which}Cam`,
      single(path, `${which} shims`, (model) => withValue(model, path, { step: 1.5 })),
    ),
    inside(
      path,
      single(`${path}.direction`, `${which} shims’ direction`, (model) =>
        withValue(model, `${path}.direction`, [0, 1, 0]),
      ),
    ),
    inside(path, number(`${path}.step`, `thickness of one ${which} shim`, 1.5)),
    inside(path, number(`${path}.max`, `greatest thickness of ${which} shims`, 12)),
  ];
}

function leg(arm: 'lowerArm' | 'upperArm', which: 'front' | 'rear'): PartMaker {
  return (model) => {
    const part = listed(`${arm}.legs.${which}`, `bend in the ${which} leg`, (now) =>
      withLegBend(now, arm, which),
    )(model);
    const count = model[arm].legs?.[which].length ?? 0;
    if (part === null || count === 0) return part;
    return { ...part, remove: (now) => withoutLegBend(now, arm, which) };
  };
}

/** Both legs stand in the file or neither does: the last bend of all takes them along. */
function withoutLegBend(
  model: Model,
  arm: 'lowerArm' | 'upperArm',
  which: 'front' | 'rear',
): Model {
  const legs = model[arm].legs ?? { front: [], rear: [] };
  if (legs.front.length + legs.rear.length <= 1) return withoutValue(model, `${arm}.legs`);
  const last = legs[which].length - 1;
  const next = withoutValue(model, `${arm}.legs.${which}.${last}`);
  return withValue(next, `${arm}.legs.${which}`, legs[which].slice(0, last));
}

function arm(name: 'lowerArm' | 'upperArm'): readonly PartMaker[] {
  const up = name === 'lowerArm' ? 1 : -1;
  return [
    ...cam(name, 'front'),
    ...cam(name, 'rear'),
    ...(name === 'upperArm' ? [...shim('front'), ...shim('rear')] : []),
    number(`${name}.tubeDiameter`, 'tube diameter', 40),
    number(`${name}.ballJointLimit`, 'ball joint limit', 28),
    axis(`${name}.studAxis`, 'stud axis', [0, 0, up]),
    axis(`${name}.housingAxis`, 'housing axis', [0, 0, up]),
    leg(name, 'front'),
    leg(name, 'rear'),
  ];
}

function span(model: Model, which: 'bump' | 'droop'): number {
  return Math.max(1, model.travel[which] - 5);
}

/** A size that comes nearest to stated dimensions, for the rim that is there. */
function nearestSize(model: Model): string {
  const { overallDiameter, sectionWidth } = tyreDimensions(model.tyre, model.wheel);
  const width = Math.max(5, Math.round(sectionWidth / 10) * 10 + 5);
  const height = (overallDiameter - model.wheel.diameter * 25.4) / 2;
  const aspect = Math.max(5, Math.round((height / width) * 20) * 5);
  return `${width}/${aspect}R${model.wheel.diameter}`;
}

/** The tyre by its size, or by two dimensions: never by both. */
const tyreForm: PartMaker = ({ tyre }) =>
  tyre.size === undefined
    ? {
        name: 'size in place of dimensions',
        remove: null,
        add: (model) => {
          const { diameter: _, width: __, ...rest } = model.tyre;
          return { ...model, tyre: { size: nearestSize(model), ...rest } };
        },
      }
    : {
        name: 'dimensions in place of size',
        remove: null,
        add: (model) => {
          const { size: _, ...rest } = model.tyre;
          const { overallDiameter, sectionWidth } = tyreDimensions(model.tyre, model.wheel);
          const [diameter, width] = [overallDiameter, sectionWidth].map(
            (value) => Math.round(value * 10) / 10,
          );
          return { ...model, tyre: { diameter: diameter ?? 0, width: width ?? 0, ...rest } };
        },
      };

/** Turns count by the pitch, and go with it. */
const threads: PartMaker = (model) => {
  const name = 'thread pitch and turns';
  return model.tieRod.pitch === undefined
    ? { name, add: (now) => withValue(now, 'tieRod.pitch', 1.5), remove: null }
    : {
        name,
        add: null,
        remove: (now) => withoutValue(withoutValue(now, 'tieRod.turns'), 'tieRod.pitch'),
      };
};

const COILOVER_NUMBERS: readonly PartMaker[] = [
  number('coilover.diameter', 'diameter', 64),
  number('coilover.minLength', 'shortest length', 350),
  number('coilover.maxLength', 'longest length', 550),
  number('coilover.springRate', 'spring rate', 80),
  number('coilover.designForce', 'design force', 8000),
].map((maker) => inside('coilover', maker));

const SHAFT_NUMBERS: readonly PartMaker[] = [
  number('halfShaft.diameter', 'diameter', 30),
  axis('halfShaft.innerAxis', 'inner joint axis', [0, 1, 0]),
  number('halfShaft.innerLimit', 'inner joint limit', 24),
  number('halfShaft.outerLimit', 'outer joint limit', 46),
  number('halfShaft.plungeIn', 'inward plunge limit', 22),
  number('halfShaft.plungeOut', 'outward plunge limit', 22),
].map((maker) => inside('halfShaft', maker));

const MAKERS: Readonly<Record<string, readonly PartMaker[]>> = {
  lowerArm: arm('lowerArm'),
  upperArm: arm('upperArm'),
  tieRod: [
    listed('tieRod.bends', 'bend', withTieRodBend),
    listed('tieRod.profile', 'profile step', (model) => {
      const steps = model.tieRod.profile ?? [];
      const [distance, diameter] = steps.at(-1) ?? [-40, (model.tieRod.diameter ?? 22) + 10];
      const step = [distance + 40, Math.max(8, diameter - 4)];
      return withValue(model, 'tieRod.profile', [...steps, step]);
    }),
    threads,
    number('tieRod.flats', 'flats of the adjuster', 6),
    number('tieRod.endLimit', 'outer joint limit', 30),
    number('tieRod.innerLimit', 'inner joint limit', 32),
    axis('tieRod.studAxis', 'stud axis', [0, 0, 1]),
    axis('tieRod.housingAxis', 'housing axis', [0, 0, 1]),
  ],
  steering: [
    single('steering.limit', 'rack travel', withSteeringLimit),
    axis('steering.direction', 'rack direction', [0, 1, 0]),
  ],
  hub: [
    number('wheel.mass', 'wheel mass', 12),
    single('wheel.section', 'rim section of its own', (model) =>
      withValue(model, 'wheel.section', wheelSection(model.wheel)),
    ),
    single('wheel.disc', 'wheel disc of its own', (model) =>
      withValue(model, 'wheel.disc', wheelDisc(model.wheel)),
    ),
    single('wheel.weights', 'stick-on weights', withWeights),
    single('brake', 'brake envelope', withBrake),
  ],
  tyre: [tyreForm],
  coilover: [single('coilover', 'coilover', withCoilover), ...COILOVER_NUMBERS],
  antiRollBar: [
    single('antiRollBar', 'anti-roll bar', withAntiRollBar),
    inside('antiRollBar', number('antiRollBar.diameter', 'diameter', 28)),
    inside('antiRollBar', number('antiRollBar.linkDiameter', 'drop link’s diameter', 14)),
  ],
  halfShaft: [single('halfShaft', 'half-shaft', withHalfShaft), ...SHAFT_NUMBERS],
  strap: [single('strap', 'limit strap', withStrap)],
  knuckle: [listed('knuckle.tubes', 'knuckle tube', withKnuckleTube)],
  travel: [
    number('stops.bump', 'bump stop', (model) => span(model, 'bump')),
    number('stops.droop', 'droop stop', (model) => span(model, 'droop')),
  ],
  obstacles: [
    () => ({ name: 'frame rail', add: withRail, remove: null }),
    () => ({ name: 'cross tube', add: withCrossTube, remove: null }),
    lastObstacle,
  ],
  limits: [
    number('required.default', 'clearance wanted', 6),
    number('required.tieRod/wheel', 'clearance of tie rod to wheel', 8),
    number('tolerance.default', 'uncertainty of the points', 2),
    single('targets', 'alignment targets', withTargets),
  ],
  vehicle: [
    single('vehicle', 'vehicle data', (model) =>
      withValue(model, 'vehicle', {
        wheelbase: 3000,
        cgHeight: 650,
        frontBrakeShare: 0.65,
        frontDriveShare: model.halfShaft === undefined ? 0 : 0.5,
        cornerMass: 500,
      }),
    ),
  ],
};

/** The last obstacle, by its own name. */
function lastObstacle({ obstacles = [] }: Model): Part | null {
  const last = obstacles.at(-1);
  if (last === undefined) return null;
  const path = `obstacles.${obstacles.length - 1}`;
  return { name: last.name, add: null, remove: (model) => withoutValue(model, path) };
}

/** What a section can gain and lose in this model. */
export function partsOf(section: string, model: Model): readonly Part[] {
  return (MAKERS[section] ?? [])
    .map((maker) => maker(model))
    .filter((part): part is Part => part !== null);
}
