/** Moves in words: which ways a thing can go, and what a move is called. */
import { inputOf, type Model, type Movable } from '../../../solver/index.ts';
import { hardPoints } from '../../state/points.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length } from '../../words/format.ts';

export interface Way {
  readonly key: string;
  readonly words: string;
  readonly axis: 0 | 1 | 2;
  readonly sense: 1 | -1;
}

/** y is positive to the left: outboard, at the left wheel. */
const WAYS: readonly Way[] = [
  { key: 'up', words: 'up', axis: 2, sense: 1 },
  { key: 'down', words: 'down', axis: 2, sense: -1 },
  { key: 'outboard', words: 'outboard', axis: 1, sense: 1 },
  { key: 'inboard', words: 'inboard', axis: 1, sense: -1 },
  { key: 'forward', words: 'forward', axis: 0, sense: 1 },
  { key: 'rearward', words: 'rearward', axis: 0, sense: -1 },
];

const ARM_WAYS: readonly Way[] = [
  { key: 'longer', words: 'longer', axis: 0, sense: 1 },
  { key: 'shorter', words: 'shorter', axis: 0, sense: -1 },
];

const LENGTH_WAYS: readonly Way[] = [
  { key: 'more', words: 'more', axis: 0, sense: 1 },
  { key: 'less', words: 'less', axis: 0, sense: -1 },
];

/** The ways a thing can go. */
export function waysOf({ kind }: Movable): readonly Way[] {
  return { point: WAYS, arm: ARM_WAYS, length: LENGTH_WAYS }[kind];
}

export const ARM_LABELS = { lowerArm: 'Lower arm', upperArm: 'Upper arm' } as const;

export function wayOf(what: Movable, by: number): Way {
  const sense = by < 0 ? -1 : 1;
  const ways = waysOf(what);
  const own = what.kind === 'point' ? ways.filter(({ axis }) => axis === what.axis) : ways;
  return own.find((way) => way.sense === sense) ?? WAYS[0]!;
}

function movableName(model: Model, what: Movable): string {
  if (what.kind === 'arm') return ARM_LABELS[what.arm];
  if (what.kind === 'length') return inputOf(model, what.path)?.label ?? what.path;
  return hardPoints(model).find(({ path }) => path === what.path)?.label ?? what.path;
}

/** "Tie rod, inner joint: 10.0 mm up". */
export function moveWords(model: Model, what: Movable, by: number, unit: LengthUnit): string {
  const name = movableName(model, what);
  return `${name}: ${length(Math.abs(by), gapUnit(unit))} ${wayOf(what, by).words}`;
}
