/** Two views of the tie rod at full size: along its stud and square to it, with its end. */
import type { RodFigure } from '../../../solver/index.ts';
import { dimension } from './dimension.ts';
import { angleFigure, type DrawingUnit, lengthFigure } from './figures.ts';
import { centreMark, type Mark, words } from './marks.ts';
import { tubeOutline } from './tube.ts';
import type { Seen, Sense, Views } from './views.ts';

/** A right rod is the mirror image: seen along its stud its bends go the other way. */
function rodSeen(sense: Sense): Readonly<Record<keyof Views, Seen>> {
  return {
    plan: ([x, , z]) => [-x, sense * z],
    behind: ([x, y]) => [-x, y],
    side: ([, y, z]) => [-y, sense * z],
  };
}

/** `sense` is −1 for a right part, which turns the other way. */
export function rodNotes(rod: RodFigure, unit: DrawingUnit, sense: Sense): string[] {
  const say = (mm: number): string => lengthFigure(mm, unit);
  const set =
    Math.abs(rod.set - rod.straight) < 0.005
      ? []
      : [`With the turns that are set: ${say(rod.set)} joint to joint`];
  return [
    `Ø ${say(rod.run.diameter)}, ${say(rod.straight)} joint to joint as measured, ${say(rod.length)} along the tube`,
    ...set,
    ...rod.bends.map(({ at, angle, rotation }) => {
      const turned =
        rotation === null ? '' : `, turned ${angleFigure(sense * rotation)} since the bend before`;
      return `Bend ${angleFigure(angle)} at ${say(at)} from the inner joint${turned}`;
    }),
    ...rod.profile.map(([from, wide]) => `From ${say(from)} of the outer joint on: Ø ${say(wide)}`),
  ];
}

export function rodViews(rod: RodFigure, unit: DrawingUnit, sense: Sense): Views {
  const seen = rodSeen(sense);
  const [inner, outer] = [rod.run.points[0]!, rod.run.points.at(-1)!];
  const outline = (view: Seen): Mark[] => [
    ...tubeOutline(rod.run.points.map(view), rod.run.diameter),
    ...centreMark(view(inner)),
    ...centreMark(view(outer)),
  ];
  const spots = rod.run.points.map(seen.plan);
  const [from, to] = [spots[0]!, spots.at(-1)!];
  const half = rod.run.diameter / 2;
  const over = Math.max(...spots.map(([, y]) => y)) + half + 12;
  const under = Math.min(...spots.map(([, y]) => y)) - half - 8;
  return {
    plan: [
      ...outline(seen.plan),
      words('sheet', [from[0], under], 'inner joint', 3.5, 'end'),
      words('sheet', [to[0], under], 'outer joint', 3.5),
      ...dimension(to, from, over, lengthFigure(rod.straight, unit)),
    ],
    behind: outline(seen.behind),
    side: outline(seen.side),
  };
}
