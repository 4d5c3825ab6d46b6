/** A bend in the tie rod, where the gap is worst: away from what it comes near. */

import { pairKey } from '../clearance/gapField.ts';
import { createPairGap, pairGapInto } from '../clearance/pairGap.ts';
import { watchedPairs } from '../clearance/pairs.ts';
import { solve } from '../corner.ts';
import { frameFrom } from '../linkage/frames.ts';
import { Slot } from '../linkage/slots.ts';
import { createPose } from '../linkage/solve.ts';
import { addScaled, distance, dot, subtract, type Vector3 } from '../math/vec3.ts';
import { placeParts } from '../measures/parts.ts';
import { tieRodStudAxis } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import type { Aim, Standing } from './aim.ts';
import { type Change, movedPoint, pointMoves, unitOrNull, wayWords } from './change.ts';

/** Greatest offset of a bend, mm, and the least distance of one from either joint beyond its end's steps. Common practice, no source. */
const MOST = 90;
const FROM_JOINT = 15;

/** Where the rod is nearest to the other part, in the design pose's vehicle axes, and which way leads away from that. */
interface Worst {
  readonly point: Vector3;
  readonly away: Vector3;
}

/** The worst place of the rod, carried over to the design pose. */
function worstOf(standing: Standing, { key, meshes }: Aim): Worst | null {
  const { corner, travel, rack } = standing;
  const pair = watchedPairs(corner, meshes).find(({ names }) => pairKey(names) === key);
  if (pair === undefined || !pair.names.includes('tieRod')) return null;
  const pose = createPose();
  solve(corner, pose, travel, rack);
  placeParts(corner, pose.data);
  const gap = createPairGap(pair);
  pairGapInto(gap, pose);
  const isFirst = pair.names[0] === 'tieRod';
  const rod = isFirst ? gap.pointA : gap.pointB;
  const other = isFirst ? gap.pointB : gap.pointA;
  const { tieRod } = corner.model;
  const frame = frameFrom(
    tieRod.outer,
    subtract(tieRod.outer, tieRod.inner),
    tieRodStudAxis(tieRod),
  );
  let point: Vector3 = frame.origin;
  let away: Vector3 = [0, 0, 0];
  frame.axes.forEach((axis, k) => {
    let at = 0;
    let off = 0;
    for (let i = 0; i < 3; i += 1) {
      const placed = pose.data[Slot.rodFrame + 3 * k + i]!;
      at += placed * (rod[i]! - pose.data[Slot.outer + i]!);
      off += placed * (rod[i]! - other[i]!);
    }
    point = addScaled(point, axis, at);
    if (k > 0) away = addScaled(away, axis, off);
  });
  const direction = unitOrNull(away);
  return direction === null ? null : { point, away: direction };
}

/** A place on the rod's straight line as far from the outer joint as the point, kept off both joints and the end's steps. */
function onLine({ tieRod }: Model, point: Vector3): { base: Vector3; fromOuter: number } {
  const span = distance(tieRod.outer, tieRod.inner);
  const along = unitOrNull(subtract(tieRod.inner, tieRod.outer)) ?? [0, -1, 0];
  const steps = tieRod.profile?.at(-1)?.[0] ?? 0;
  const least = Math.min(span / 2, steps + FROM_JOINT);
  const wanted = dot(subtract(point, tieRod.outer), along);
  const fromOuter = Math.min(span - FROM_JOINT, Math.max(least, wanted));
  return { base: addScaled(tieRod.outer, along, fromOuter), fromOuter };
}

function nearest(points: readonly Vector3[], to: Vector3): number {
  let best = 0;
  points.forEach((point, i) => {
    if (distance(point, to) < distance(points[best] ?? point, to)) best = i;
  });
  return best;
}

/** A new bend where the rod is straight, or else the nearest one moved. */
export function bendChanges(standing: Standing, aim: Aim): Change[] {
  const { model } = standing.corner;
  const { tieRod } = model;
  const worst = worstOf(standing, aim);
  if (worst === null) return [];
  const { point, away } = worst;
  const bends = tieRod.bends ?? [];
  const which = nearest(bends, point);
  const moved = bends[which];
  const { base, fromOuter } = onLine(model, moved ?? point);
  const from = moved ?? base;
  const after = (amount: number): Vector3 => movedPoint(from, away, amount);
  return [
    {
      kind: 'rodBend',
      says: () => [moved === undefined ? 'tie rod bent' : 'tie rod’s bend moved', wayWords(away)],
      most: MOST,
      at: (amount) => {
        const bend = after(amount);
        const all =
          moved === undefined ? [bend] : bends.map((one, i) => (i === which ? bend : one));
        return { ...model, tieRod: { ...tieRod, bends: all } };
      },
      settings: (amount) => [
        {
          label: 'bend, from the outer joint along the rod',
          before: moved === undefined ? null : fromOuter,
          after: fromOuter,
          unit: 'mm',
        },
        ...pointMoves('bend', moved ?? null, after(amount)),
      ],
      cutsRange: false,
    },
  ];
}
