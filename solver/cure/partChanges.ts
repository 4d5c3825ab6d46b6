/** Changes of one part: spacer, wheel offset, the tie rod's diameter, its ends, the coilover's mounts. */
import type { Corner } from '../corner.ts';
import type { Vector3 } from '../math/vec3.ts';
import { tieRodDiameter, wheelSpacer } from '../model/defaults.ts';
import type { Model, TieRod } from '../model/model.ts';
import { bothWays, type Change, movedPoint, pointMoves, tidy, wayWords } from './change.ts';
import type { CureKind } from './cure.ts';

/** Greatest changes, mm. Common practice, no source. */
const MOST = { spacer: 60, offset: 60, end: 40, mount: 60 } as const;
/** A tie rod is made no thinner than this share of its diameter. Common practice, no source: its strength is not checked. */
const THINNEST = 0.6;

function spacerChange({ model }: Corner, sense: 1 | -1): Change {
  const { wheel } = model;
  const before = wheelSpacer(wheel);
  const after = (amount: number): number => tidy(before + sense * amount);
  return {
    kind: 'spacer',
    says: () => ['spacer', sense > 0 ? 'thicker' : 'thinner'],
    most: sense > 0 ? MOST.spacer : before,
    at: (amount) => ({ ...model, wheel: { ...wheel, spacer: Math.max(0, after(amount)) } }),
    settings: (amount) => [{ label: 'spacer', before, after: after(amount), unit: 'mm' }],
    cutsRange: false,
  };
}

function offsetChange({ model }: Corner, sense: 1 | -1): Change {
  const { wheel } = model;
  const after = (amount: number): number => tidy(wheel.offset + sense * amount);
  return {
    kind: 'wheelOffset',
    says: () => ['wheel offset', sense > 0 ? 'more' : 'less'],
    most: MOST.offset,
    at: (amount) => ({ ...model, wheel: { ...wheel, offset: after(amount) } }),
    settings: (amount) => [
      { label: 'wheel offset', before: wheel.offset, after: after(amount), unit: 'mm' },
    ],
    cutsRange: false,
  };
}

/** The rod's tube by so much thinner: its plain diameter, and what the profile ends with. Steps at its end stay. */
function thinner(tieRod: TieRod, amount: number): TieRod {
  const { profile } = tieRod;
  const last = (profile?.length ?? 0) - 1;
  return {
    ...tieRod,
    diameter: tidy(tieRodDiameter(tieRod) - amount),
    ...(profile === undefined
      ? {}
      : {
          profile: profile.map(([at, mm], i) => (i === last ? [at, tidy(mm - amount)] : [at, mm])),
        }),
  } as TieRod;
}

function diameterChange({ model }: Corner): Change {
  const { tieRod } = model;
  const before = tieRod.profile?.at(-1)?.[1] ?? tieRodDiameter(tieRod);
  return {
    kind: 'rodDiameter',
    says: () => ['tie rod’s tube', 'thinner'],
    most: (1 - THINNEST) * Math.min(before, tieRodDiameter(tieRod)),
    at: (amount) => ({ ...model, tieRod: thinner(tieRod, amount) }),
    settings: (amount) => [
      { label: 'tie rod’s diameter', before, after: before - amount, unit: 'mm' },
    ],
    cutsRange: false,
  };
}

/** A point moved along an axis. */
function pointChange(
  kind: CureKind,
  label: string,
  most: number,
  before: Vector3,
  along: Vector3,
  put: (point: Vector3) => Model,
): Change {
  const after = (amount: number): Vector3 => movedPoint(before, along, amount);
  return {
    kind,
    says: () => [label, wayWords(along)],
    most,
    at: (amount) => put(after(amount)),
    settings: (amount) => pointMoves(label, before, after(amount)),
    cutsRange: false,
  };
}

function endChanges({ model }: Corner, end: 'inner' | 'outer'): Change[] {
  const { tieRod } = model;
  const kind = end === 'inner' ? 'innerEnd' : 'outerEnd';
  return bothWays().map((along) =>
    pointChange(kind, `${end} tie rod end`, MOST.end, tieRod[end], along, (point) => ({
      ...model,
      tieRod: { ...tieRod, [end]: point },
    })),
  );
}

function mountChanges({ model }: Corner, end: 'top' | 'bottom'): Change[] {
  const { coilover } = model;
  if (coilover === undefined) return [];
  const kind = end === 'top' ? 'coiloverTop' : 'coiloverBottom';
  return bothWays().map((along) =>
    pointChange(kind, `coilover’s ${end} mount`, MOST.mount, coilover[end], along, (point) => ({
      ...model,
      coilover: { ...coilover, [end]: point },
    })),
  );
}

/** The changes of each kind that moves one part, but for bends. */
export const PART_CHANGES: Readonly<Partial<Record<CureKind, (corner: Corner) => Change[]>>> = {
  spacer: (corner) => [spacerChange(corner, 1), spacerChange(corner, -1)],
  wheelOffset: (corner) => [offsetChange(corner, -1), offsetChange(corner, 1)],
  rodDiameter: (corner) => [diameterChange(corner)],
  innerEnd: (corner) => endChanges(corner, 'inner'),
  outerEnd: (corner) => endChanges(corner, 'outer'),
  coiloverTop: (corner) => mountChanges(corner, 'top'),
  coiloverBottom: (corner) => mountChanges(corner, 'bottom'),
};
