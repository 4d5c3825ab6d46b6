/**
 * The tie rod in its own frame: origin the outer joint, x towards it from the inner one. Every part of it lies inside the
 * solver's pieces (their centreline and diameters), so that the picture touches nothing that the number does not.
 */
import { Vector3 } from 'three';
import { type RodPieces, rodPieces } from '../../../solver/clearance/rodPieces.ts';
import type { Corner } from '../../../solver/index.ts';
import type { MaterialName } from '../materialNames.ts';
import { JOINT, ROD_END } from '../proportions.ts';
import { addBall, addHex, revolve } from './revolve.ts';
import { type Assembly, axisFrame, piece } from './solid.ts';
import { addTube } from './sweep.ts';

/** A length of the rod, by distance from the outer joint. */
export interface RodStretch {
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  readonly form: 'round' | 'hex' | 'thread';
}

/** End forging, bare thread, jam nut and sleeve of a rod whose model states one diameter, as parts of it. */
const PLAIN = {
  neck: 0.94,
  neckTo: 46,
  thread: 0.66,
  threadTo: 60,
  nut: 0.62,
  inner: 0.74,
  innerFor: 34,
} as const;
/** A thicker stretch no longer than this before a thinner one is a jam nut, mm. */
const LONGEST_NUT = 42;

function plainStretches(length: number, radius: number): RodStretch[] {
  const neckTo = Math.min(PLAIN.neckTo, length * 0.2);
  const threadTo = Math.min(PLAIN.threadTo, length * 0.26);
  const nutTo = threadTo + PLAIN.nut * 2 * radius;
  const innerFrom = Math.max(nutTo + 1, length - PLAIN.innerFor);
  return [
    { from: 0, to: neckTo, radius: radius * PLAIN.neck, form: 'round' },
    { from: neckTo, to: threadTo, radius: radius * PLAIN.thread, form: 'thread' },
    { from: threadTo, to: nutTo, radius, form: 'hex' },
    { from: nutTo, to: innerFrom, radius, form: 'round' },
    { from: innerFrom, to: length, radius: radius * PLAIN.inner, form: 'thread' },
  ];
}

/** The rod's stretches from the outer joint: the profile's, or a plain rod's. */
export function rodStretches(pieces: RodPieces, hasProfile: boolean): RodStretch[] {
  const { lengths, radii } = pieces;
  const length = lengths.at(-1)!;
  if (!hasProfile) return plainStretches(length, radii[0]!);
  const stretches: RodStretch[] = [];
  radii.forEach((radius, i) => {
    const last = stretches.at(-1);
    if (last !== undefined && last.radius === radius)
      stretches[stretches.length - 1] = { ...last, to: lengths[i + 1]! };
    else stretches.push({ from: lengths[i]!, to: lengths[i + 1]!, radius, form: 'round' });
  });
  return stretches.map((stretch, i) => {
    const next = stretches[i + 1];
    const isStraight = lengths.every((at) => at <= stretch.from || at >= stretch.to);
    const isNut =
      i > 0 &&
      isStraight &&
      next !== undefined &&
      next.radius < stretch.radius &&
      stretch.to - stretch.from <= LONGEST_NUT;
    return isNut ? { ...stretch, form: 'hex' } : stretch;
  });
}

/** Centreline between two distances from the outer joint. */
export function rodPath({ points, lengths }: RodPieces, from: number, to: number): Vector3[] {
  const at = (i: number): Vector3 =>
    new Vector3(points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!);
  const place = (distance: number): Vector3 => {
    let i = 0;
    while (i + 2 < lengths.length && lengths[i + 1]! < distance) i += 1;
    const share = (distance - lengths[i]!) / (lengths[i + 1]! - lengths[i]!);
    return at(i).lerp(at(i + 1), share);
  };
  const path = [place(from)];
  for (let i = 1; i + 1 < lengths.length; i += 1) {
    if (lengths[i]! > from + 1e-6 && lengths[i]! < to - 1e-6) path.push(at(i));
  }
  return [...path, place(to)];
}

const MATERIAL: Record<RodStretch['form'], MaterialName> = {
  round: 'rod',
  hex: 'steel',
  thread: 'steel',
};

function addStretch(
  assembly: Assembly,
  pieces: RodPieces,
  { from, to, radius, form }: RodStretch,
): void {
  const solid = piece(assembly, MATERIAL[form]);
  const path = rodPath(pieces, from, to);
  if (form === 'hex') {
    const axis = path[1]!.clone().sub(path[0]!);
    addHex(solid, axisFrame(path[0]!, axis), radius, 0, axis.length());
    return;
  }
  // Mitred exactly at the bends: straight lengths with a ball of the same radius at each corner.
  for (let i = 1; i < path.length; i += 1)
    addTube(solid, [path[i - 1]!, path[i]!], radius, { segments: 22 });
  for (const corner of path.slice(1, -1)) addBall(solid, corner, radius, 22);
}

/** The rod with its outer housing; `housing` is that axis in the rod's frame, towards the knuckle's seat. */
export function buildTieRod(corner: Corner, housing: Vector3): Assembly {
  const assembly: Assembly = {};
  const pieces = rodPieces(corner);
  for (const stretch of rodStretches(pieces, corner.model.tieRod.profile !== undefined))
    addStretch(assembly, pieces, stretch);
  addEnd(assembly, housing);
  const inner = new Vector3(pieces.points.at(-3)!, pieces.points.at(-2)!, pieces.points.at(-1)!);
  addBall(piece(assembly, 'steel'), inner, Math.min(12, pieces.radii.at(-1)! + 2));
  return assembly;
}

/** The housing of the outer ball: an eye forged in one with the rod's end. */
function addEnd(assembly: Assembly, housing: Vector3): void {
  const r = ROD_END;
  revolve(
    piece(assembly, 'rod'),
    axisFrame(new Vector3(), housing),
    [
      [-0.95 * r, 0],
      [-0.95 * r, 0.5 * r],
      [-0.8 * r, 0.72 * r],
      [-0.2 * r, r],
      [0.3 * r, r],
      [JOINT.mouth * r, 0.78 * r],
      [JOINT.mouth * r, 0],
    ],
    { segments: 26 },
  );
}
