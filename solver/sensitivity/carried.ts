/** What rides on a body: its design components, found once, and where it is in a motion. */
import type { Carrier } from '../model/model.ts';
import { type Constants, type DesignInputs, knuckleAxes, obliquely } from './design.ts';
import type { Motion } from './motion.ts';
import {
  along,
  axesFrom,
  composed,
  difference,
  type JetAxes,
  type JetVector,
  sum,
} from './vectors.ts';

/** Axes of a body in a motion, and the point they are measured from. */
type Placed = (motion: Motion) => { readonly origin: JetVector; readonly axes: JetAxes };

export interface Body {
  /** The place in a motion of what stands at a point in the design pose. */
  readonly point: (designed: JetVector) => (motion: Motion) => JetVector;
  /** The same of a direction. */
  readonly direction: (designed: JetVector) => (motion: Motion) => JetVector;
}

function bodyOf(
  { jets }: DesignInputs,
  origin: JetVector,
  componentsOf: (a: JetVector) => JetVector,
  placed: Placed,
): Body {
  return {
    point: (designed) => {
      const at = componentsOf(difference(jets, designed, origin));
      return (motion) => {
        const body = placed(motion);
        return sum(jets, body.origin, composed(jets, body.axes, at));
      };
    },
    direction: (designed) => {
      const at = componentsOf(designed);
      return (motion) => composed(jets, placed(motion).axes, at);
    },
  };
}

/** An arm: e1 along its pivots, e2 towards the ball joint, in the design pose without and in a motion with its settings. */
function armBody(
  design: DesignInputs,
  arm: 'lowerArm' | 'upperArm',
  [front, rear]: readonly [JetVector, JetVector],
): Body {
  const { jets, point } = design;
  const ball = point(`${arm}.ballJoint`);
  const frame = (a: JetVector, b: JetVector, joint: JetVector): JetAxes =>
    axesFrom(jets, difference(jets, a, b), difference(jets, joint, b));
  const designed = frame(point(`${arm}.frontPivot`), point(`${arm}.rearPivot`), ball);
  return bodyOf(
    design,
    ball,
    (a) => along(jets, designed, a),
    (motion) => {
      const origin = arm === 'lowerArm' ? motion.lower : motion.upper;
      return { origin, axes: frame(front, rear, origin) };
    },
  );
}

/** The knuckle by its oblique axes. */
function knuckleBody(design: DesignInputs): Body {
  const { jets, point } = design;
  const lower = point('lowerArm.ballJoint');
  const axes = knuckleAxes(jets, lower, point('upperArm.ballJoint'), point('tieRod.outer'));
  return bodyOf(
    design,
    lower,
    (a) => obliquely(jets, axes, a),
    (motion) => ({ origin: motion.lower, axes: motion.knuckle }),
  );
}

/** The three bodies that carry other parts. */
export function bodiesOf(
  design: DesignInputs,
  { lowerPivots, upperPivots }: Constants,
): Readonly<Record<Carrier, Body>> {
  return {
    lowerArm: armBody(design, 'lowerArm', lowerPivots),
    upperArm: armBody(design, 'upperArm', upperPivots),
    knuckle: knuckleBody(design),
  };
}

/** The tie rod: e1 = unit(TO − TI), e2 the stud axis made normal to it. Directions only. */
export function rodDirection(
  { jets, point }: DesignInputs,
  stud: JetVector,
  studIn: (motion: Motion) => JetVector,
  designed: JetVector,
): (motion: Motion) => JetVector {
  const from = difference(jets, point('tieRod.outer'), point('tieRod.inner'));
  const at = along(jets, axesFrom(jets, from, stud), designed);
  return (motion) => {
    const rod = difference(jets, motion.outer, motion.inner);
    return composed(jets, axesFrom(jets, rod, studIn(motion)), at);
  };
}
