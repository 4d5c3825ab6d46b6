/** Three views of an arm at full size, with the measures a fabricator sets his jig by. */
import type { ArmFigure, ArmLeg } from '../../../solver/index.ts';
import { dimension } from './dimension.ts';
import { angleFigure, type DrawingUnit, lengthFigure } from './figures.ts';
import { centreMark, type Mark, type Spot, stroke, words } from './marks.ts';
import { tubeOutline } from './tube.ts';
import { type Seen, type Sense, type Views, viewsFor } from './views.ts';

const AXIS_BEYOND = 25;
const LETTERING = 3.5;
/** From the tubes to the dimensions beside them, and from one dimension to the next, mm. */
const CLEAR = 12;
const NEXT = 12;

function tubes({ legs }: ArmFigure, seen: Seen): Mark[] {
  return [legs.front, legs.rear].flatMap(({ run }) =>
    tubeOutline(run.points.map(seen), run.diameter),
  );
}

/** The cup's axis through the ball joint as a stroke, long enough to be read. */
function cupAxis({ ball, cupAxis: axis }: ArmFigure, seen: Seen): Mark {
  const end = (by: number): Spot =>
    seen([ball[0] + by * axis[0], ball[1] + by * axis[1], ball[2] + by * axis[2]]);
  return stroke('centre', end(-45), end(45));
}

/** How far a leg's tube reaches past the straight line from its pivot to the ball joint, away from the other leg, mm. */
function bulge({ run }: ArmLeg, sign: number): number {
  const [from, to] = [run.points[0]!, run.points.at(-1)!];
  const [du, dv] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(du, dv) || 1;
  const beyond = run.points.map(
    (point) => (sign * ((point[0] - from[0]) * dv - (point[1] - from[1]) * du)) / size,
  );
  return Math.max(0, ...beyond) + run.diameter / 2;
}

function plan(arm: ArmFigure, unit: DrawingUnit, seen: Seen, sense: Sense): Mark[] {
  const [front, rear, ball] = [seen(arm.front), seen(arm.rear), seen(arm.ball)];
  const foot: Spot = [0, 0];
  const say = (mm: number): string => lengthFigure(mm, unit);
  const { front: frontLeg, rear: rearLeg } = arm.legs;
  const top = Math.max(front[1], ball[1]);
  const low = Math.min(rear[1], 0);
  const beside = rearLeg.run.diameter / 2 + CLEAR;
  const under = ball[1] - low + bulge(rearLeg, -1) + 2 * CLEAR;
  const [inboard, outboard] =
    sense === 1 ? (['start', 'end'] as const) : (['end', 'start'] as const);
  return [
    ...tubes(arm, seen),
    stroke('centre', [0, top + AXIS_BEYOND], [0, low - AXIS_BEYOND]),
    ...centreMark(front),
    ...centreMark(rear),
    ...centreMark(ball, 9),
    words('sheet', [front[0] + sense * 5, front[1] + 5], 'front pivot', LETTERING, inboard),
    words('sheet', [rear[0] + sense * 5, rear[1] - 9], 'rear pivot', LETTERING, inboard),
    words('sheet', [ball[0] - sense * 6, ball[1] + 8], 'ball joint', LETTERING, outboard),
    ...dimension(rear, front, -sense * (beside + NEXT), say(arm.pivotToPivot)),
    ...dimension(foot, front, -sense * beside, say(Math.abs(arm.offsets.front)), [0, 1]),
    ...dimension(rear, foot, -sense * beside, say(Math.abs(arm.offsets.rear)), [0, 1]),
    ...dimension(ball, foot, -under, say(arm.reach), [1, 0]),
    ...dimension(front, ball, -sense * (CLEAR + bulge(frontLeg, 1)), say(arm.frontToBall)),
    ...dimension(rear, ball, sense * (CLEAR + bulge(rearLeg, -1)), say(arm.rearToBall)),
  ];
}

/** `sense` is −1 for a right part, which turns the other way. */
function legNotes(name: string, leg: ArmLeg, unit: DrawingUnit, sense: Sense): string[] {
  const bends = leg.bends.map(({ at, angle, rotation }) => {
    const turned =
      rotation === null ? '' : `, turned ${angleFigure(sense * rotation)} since the bend before`;
    return `   bend ${angleFigure(angle)} at ${lengthFigure(at, unit)} from the pivot${turned}`;
  });
  const turn =
    leg.rotation === null ? '' : `, cup turned ${angleFigure(sense * leg.rotation)} about it`;
  return [
    `${name} tube Ø ${lengthFigure(leg.run.diameter, unit)}: ${lengthFigure(leg.length, unit)} centre to centre, ${angleFigure(leg.pivotAngle)} to the pivots’ line, rises ${angleFigure(leg.rise)}${turn}`,
    ...bends,
  ];
}

/** What the views cannot say, line by line. */
export function armNotes(arm: ArmFigure, unit: DrawingUnit, sense: Sense): string[] {
  const { cup } = arm;
  const assumed = arm.isCupStated
    ? ''
    : ' (not stated in the model: taken along the line of both ball joints)';
  return [
    ...legNotes('Front', arm.legs.front, unit, sense),
    ...legNotes('Rear', arm.legs.rear, unit, sense),
    `Angle between both tubes at the ball joint ${angleFigure(arm.ballAngle)}`,
    `Cup tilt ${angleFigure(cup.whole)} from square to the arm’s plane: ${angleFigure(cup.forward)} forward, ${angleFigure(cup.outward)} outboard at its top${assumed}`,
  ];
}

export function armViews(arm: ArmFigure, unit: DrawingUnit, sense: Sense): Views {
  const seen = viewsFor(sense);
  const centres = (view: Seen): Mark[] =>
    [arm.front, arm.rear, arm.ball].flatMap((point) => centreMark(view(point)));
  const outline = (view: Seen): Mark[] => [
    ...tubes(arm, view),
    ...centres(view),
    cupAxis(arm, view),
  ];
  return {
    plan: plan(arm, unit, seen.plan, sense),
    behind: outline(seen.behind),
    side: outline(seen.side),
  };
}
