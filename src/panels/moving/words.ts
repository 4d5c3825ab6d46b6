/** Moves in words: which ways a thing can go, and what a move is called. */
import type { Model, Movable } from '../../../solver/index.ts';
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
export const WAYS: readonly Way[] = [
  { key: 'up', words: 'up', axis: 2, sense: 1 },
  { key: 'down', words: 'down', axis: 2, sense: -1 },
  { key: 'outboard', words: 'outboard', axis: 1, sense: 1 },
  { key: 'inboard', words: 'inboard', axis: 1, sense: -1 },
  { key: 'forward', words: 'forward', axis: 0, sense: 1 },
  { key: 'rearward', words: 'rearward', axis: 0, sense: -1 },
];

export const ARM_WAYS: readonly Way[] = [
  { key: 'longer', words: 'longer', axis: 0, sense: 1 },
  { key: 'shorter', words: 'shorter', axis: 0, sense: -1 },
];

export const ARM_LABELS = { lowerArm: 'Lower arm', upperArm: 'Upper arm' } as const;

export function wayOf(what: Movable, by: number): Way {
  const sense = by < 0 ? -1 : 1;
  const ways = what.kind === 'arm' ? ARM_WAYS : WAYS.filter(({ axis }) => axis === what.axis);
  return ways.find((way) => way.sense === sense) ?? WAYS[0]!;
}

/** "Tie rod, inner joint: 10.0 mm up". */
export function moveWords(model: Model, what: Movable, by: number, unit: LengthUnit): string {
  const name =
    what.kind === 'arm'
      ? ARM_LABELS[what.arm]
      : (hardPoints(model).find(({ path }) => path === what.path)?.label ?? what.path);
  return `${name}: ${length(Math.abs(by), gapUnit(unit))} ${wayOf(what, by).words}`;
}
