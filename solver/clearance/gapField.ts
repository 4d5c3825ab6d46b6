/** A gap over travel × lock that can be mapped: of one watched pair, or of whichever pair is worst off in each pose. */
import type { Corner } from '../corner.ts';
import type { Pose } from '../linkage/solve.ts';
import type { MeshSurfaces } from './mesh.ts';
import { createPairGap, type PairGap, pairGapInto } from './pairGap.ts';
import { watchedPairs } from './pairs.ts';
import { USUAL_GAP, wantedGap } from './required.ts';
import { createRodGap, rodGapInto } from './rodGap.ts';

/** A pair's name, "tieRod/wheel", or `WORST`. */
export type PairKey = string;

/** The key of whichever pair is worst off. */
export const WORST: PairKey = 'worst';

export function pairKey(names: readonly [string, string]): PairKey {
  return names.join('/');
}

/** Refilled by `read`, lengths mm. */
export interface GapField {
  /** The pairs it is of; one, unless it is the worst of all. */
  readonly pairs: readonly (readonly [string, string])[];
  /** The least gap wanted where `value` is compared with it. */
  readonly wanted: number;
  /** The gap of the pair that counts, and its place in `pairs`. */
  gap: number;
  which: number;
  /**
   * What is mapped. Of one pair, its gap. Of the worst of all, a measure that is 0 where a pair touches and `wanted`
   * where a pair has just the gap it wants, whatever each pair wants, and grows mm for mm outside of that stretch.
   */
  value: number;
  /** Nearest points of both parts, vehicle axes: see `PairGap`. */
  readonly pointA: Float64Array;
  readonly pointB: Float64Array;
  /** Reads a pose whose parts are placed. */
  read(pose: Pose): void;
}

function rodField(corner: Corner, against: 'wheel' | 'tyre'): GapField {
  const rod = createRodGap(corner, against);
  const field: GapField = {
    pairs: [['tieRod', against]],
    wanted: wantedGap(corner.model, 'tieRod', against),
    gap: Number.NaN,
    which: 0,
    value: Number.NaN,
    pointA: rod.rodPoint,
    pointB: rod.wheelPoint,
    read(pose) {
      rodGapInto(rod, pose);
      field.gap = rod.gap;
      field.value = rod.gap;
    },
  };
  return field;
}

function pairField(pair: PairGap): GapField {
  const field: GapField = {
    pairs: [pair.pair.names],
    wanted: pair.pair.required,
    gap: Number.NaN,
    which: 0,
    value: Number.NaN,
    pointA: pair.pointA,
    pointB: pair.pointB,
    read(pose) {
      pairGapInto(pair, pose);
      field.gap = pair.gap;
      field.value = pair.gap;
    },
  };
  return field;
}

/** A gap on the common scale: 0 stays 0, `required` becomes `wanted`, and beyond it goes on mm for mm. */
function onScale(gap: number, required: number, wanted: number): number {
  if (gap <= 0 || required <= 0) return gap;
  return gap < required ? (gap * wanted) / required : gap - required + wanted;
}

function worstField(corner: Corner, meshes: MeshSurfaces | undefined): GapField {
  const gaps = watchedPairs(corner, meshes).map(createPairGap);
  const wanted = corner.model.required?.['default'] ?? USUAL_GAP;
  const field: GapField = {
    pairs: gaps.map(({ pair }) => pair.names),
    wanted,
    gap: Number.NaN,
    which: 0,
    value: Number.NaN,
    pointA: new Float64Array(3),
    pointB: new Float64Array(3),
    read(pose) {
      field.value = Number.POSITIVE_INFINITY;
      for (let i = 0; i < gaps.length; i += 1) {
        const one = gaps[i]!;
        pairGapInto(one, pose);
        const value = onScale(one.gap, one.pair.required, wanted);
        if (value >= field.value) continue;
        field.value = value;
        field.gap = one.gap;
        field.which = i;
      }
      const worst = gaps[field.which]!;
      field.pointA.set(worst.pointA);
      field.pointB.set(worst.pointB);
    },
  };
  return field;
}

/** The field of a pair of the corner, or of the worst of all; null where the corner watches no such pair. */
export function createGapField(
  corner: Corner,
  key: PairKey,
  meshes?: MeshSurfaces,
): GapField | null {
  if (key === WORST) return worstField(corner, meshes);
  if (key === 'tieRod/wheel') return rodField(corner, 'wheel');
  if (key === 'tieRod/tyre') return rodField(corner, 'tyre');
  const pair = watchedPairs(corner, meshes).find(({ names }) => pairKey(names) === key);
  return pair === undefined ? null : pairField(createPairGap(pair));
}
