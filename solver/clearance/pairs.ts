/** Which parts are watched against which, and why the others are not. */
import type { Corner } from '../corner.ts';
import { carrier } from '../model/defaults.ts';
import type { Carrier, Model } from '../model/model.ts';
import { partNames, splitPair } from '../model/sound/names.ts';
import type { MeshSurfaces } from './mesh.ts';
import { wantedGap } from './required.ts';
import { type Shape, shapesOf } from './shapes.ts';

/** Two parts whose gap is watched over travel × lock. */
export interface WatchedPair {
  readonly names: readonly [string, string];
  readonly first: Shape;
  readonly second: Shape;
  /** Least gap wanted, mm. */
  readonly required: number;
  /** True when both parts are fixed to the same body: the gap is the same in every pose. */
  readonly isConstant: boolean;
}

/** Two parts that are not watched against each other. */
export interface UnwatchedPair {
  readonly names: readonly [string, string];
  /** The reason, a sentence without its full stop. */
  readonly why: string;
}

const CARRIERS: Readonly<Record<Carrier, string>> = {
  lowerArm: 'the lower arm',
  upperArm: 'the upper arm',
  knuckle: 'the knuckle',
};

/** Pairs joined to each other, or with a part between them, whatever the model. In the order of the parts. */
const ALWAYS: readonly UnwatchedPair[] = [
  { names: ['wheel', 'tyre'], why: 'the tyre is mounted on the wheel' },
  { names: ['tyre', 'brake'], why: 'the wheel’s barrel lies between tyre and brake' },
  { names: ['tieRod', 'knuckle'], why: 'the tie rod’s outer joint is on the knuckle' },
  { names: ['upperArm', 'knuckle'], why: 'the upper ball joint joins them' },
  { names: ['lowerArm', 'knuckle'], why: 'the lower ball joint joins them' },
  { names: ['halfShaft', 'knuckle'], why: 'the half-shaft turns in the knuckle’s hub' },
  { names: ['halfShaft', 'brake'], why: 'the half-shaft runs through the brake to the hub' },
  { names: ['knuckle', 'brake'], why: 'the brake is bolted to the knuckle' },
];

/** The reason given for pairs that the model's `unwatched` names. */
export const BY_DESIGN = 'the model says that they touch by design';
const NOT_AT_HAND = 'the mesh’s file is not at hand';

/** Pairs joined where the model has them joined: what a coilover or a drop link is carried by. */
function joinedBy(model: Model): UnwatchedPair[] {
  const { coilover, antiRollBar } = model;
  const joined: UnwatchedPair[] = [];
  if (coilover !== undefined) {
    const on = carrier(coilover);
    joined.push({ names: ['coilover', on], why: `the coilover stands on ${CARRIERS[on]}` });
  }
  if (antiRollBar !== undefined) {
    const on = carrier(antiRollBar);
    joined.push({ names: ['antiRollBarLink', on], why: `the drop link hangs on ${CARRIERS[on]}` });
  }
  return joined;
}

/** Pairs that the model itself leaves unwatched. */
function leftOutBy(model: Model): UnwatchedPair[] {
  const names = new Set(partNames(model));
  return (model.unwatched ?? []).flatMap((key) => {
    const pair = splitPair(key, names);
    return pair === undefined ? [] : [{ names: pair, why: BY_DESIGN }];
  });
}

function isPair(names: readonly [string, string], a: string, b: string): boolean {
  return (names[0] === a && names[1] === b) || (names[0] === b && names[1] === a);
}

function isStanding(shape: Shape): boolean {
  return shape.kind !== 'line' && shape.body === 'vehicle';
}

/** Why two shapes are not watched against each other; null when they are. */
function whyNot(reasons: readonly UnwatchedPair[], first: Shape, second: Shape): string | null {
  const known = reasons.find(({ names }) => isPair(names, first.name, second.name));
  if (known !== undefined) return known.why;
  if (isStanding(first) && isStanding(second)) return 'both are fixed to the body';
  const isMissing = [first, second].some((shape) => shape.kind === 'mesh' && !shape.surface);
  return isMissing ? NOT_AT_HAND : null;
}

function isOnOneBody(first: Shape, second: Shape): boolean {
  return first.kind !== 'line' && second.kind !== 'line' && first.body === second.body;
}

interface Sorted {
  readonly watched: readonly WatchedPair[];
  readonly unwatched: readonly UnwatchedPair[];
}

function sortPairs(corner: Corner, meshes: MeshSurfaces | undefined): Sorted {
  const { model } = corner;
  const shapes = shapesOf(corner, meshes);
  const reasons = [...ALWAYS, ...joinedBy(model), ...leftOutBy(model)];
  const watched: WatchedPair[] = [];
  const unwatched: UnwatchedPair[] = [];
  shapes.forEach((first, index) => {
    for (const second of shapes.slice(index + 1)) {
      const names = namesOf(first, second);
      const why = whyNot(reasons, first, second);
      const required = wantedGap(model, names[0], names[1]);
      const isConstant = isOnOneBody(first, second);
      if (why !== null) unwatched.push({ names, why });
      else if (names[0] === first.name)
        watched.push({ names, first, second, required, isConstant });
      else watched.push({ names, first: second, second: first, required, isConstant });
    }
  });
  return { watched, unwatched };
}

/** What stands still, or is large, is named last: the trade says tie rod to wheel, coilover to upper arm. */
const NAMED_LAST: readonly string[] = ['tyre', 'wheel'];

function namesOf(first: Shape, second: Shape): readonly [string, string] {
  const a = NAMED_LAST.indexOf(first.name);
  const isLast = a >= 0 && !isStanding(second) && second.kind !== 'revolved';
  return isLast ? [second.name, first.name] : [first.name, second.name];
}

/**
 * Every pair of the corner that is watched, wanted gaps included: all pairs of parts that move against each other and
 * are not joined, parts of the knuckle that are not joined, and every obstacle against every part.
 */
export function watchedPairs(corner: Corner, meshes?: MeshSurfaces): WatchedPair[] {
  return [...sortPairs(corner, meshes).watched];
}

/** Every pair of the corner's parts and obstacles that is not watched, and why. */
export function unwatchedPairs(corner: Corner, meshes?: MeshSurfaces): UnwatchedPair[] {
  return [...sortPairs(corner, meshes).unwatched];
}
