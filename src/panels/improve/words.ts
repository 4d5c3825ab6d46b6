/** Movers, wishes and what is to stay, in words. */

import { type Dimension, dimensionOf } from '../../../solver/improve/dimension.ts';
import type { Aiming, Height, Lock, Mover, Stay, Wish } from '../../../solver/improve/plan.ts';
import {
  type AxleKey,
  inWords,
  type Margin,
  type MeasureKey,
  type Model,
  measureRow,
  type UnitKind,
} from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { figureStyle } from '../../words/figures.ts';
import { gapUnit, signedLength } from '../../words/format.ts';
import { spreadWords } from '../../words/known.ts';
import { quantityOf } from '../../words/quantity.ts';
import type { Design } from './useDesign.ts';

export const HEIGHT_WORDS: Readonly<Record<'ride' | 'bump' | 'droop', string>> = {
  ride: 'ride height',
  bump: 'full bump',
  droop: 'full droop',
};

export const LOCK_WORDS: Readonly<Record<Lock, string>> = {
  straight: 'straight ahead',
  left: 'left lock',
  right: 'right lock',
};

export const AIMING_WORDS: Readonly<Record<Aiming, string>> = {
  exactly: 'exactly',
  atLeast: 'at least',
  atMost: 'at most',
};

export function heightWords(height: Height, unit: LengthUnit): string {
  if (typeof height !== 'number') return HEIGHT_WORDS[height];
  return `travel ${signedLength(height, unit, 0)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function poseWords(height: Height, lock: Lock, unit: LengthUnit): string {
  const where = heightWords(height, unit);
  return lock === 'straight' ? where : `${where}, ${LOCK_WORDS[lock]}`;
}

function measuredWords(
  measure: MeasureKey | AxleKey,
  height: Height,
  lock: Lock,
  unit: LengthUnit,
): string {
  return `${capital(measureRow(measure).label)}, ${poseWords(height, lock, unit)}`;
}

/** What a wish is about: "Toe change from ride, full droop to full bump". */
export function wishWords(wish: Wish, margins: readonly Margin[], unit: LengthUnit): string {
  if (wish.of === 'toeChange') {
    return `Toe change from ride, ${heightWords(wish.from, unit)} to ${heightWords(wish.to, unit)}`;
  }
  if (wish.of === 'measure') return measuredWords(wish.measure, wish.height, wish.lock, unit);
  if (wish.of === 'change') {
    const { label } = measureRow(wish.measure);
    return `${capital(label)}’s change, ride height to ${heightWords(wish.height, unit)}`;
  }
  const margin = margins.find(({ key }) => key === wish.key);
  const what = margin === undefined ? wish.key : margin.label;
  return wish.key.includes('/') ? `Least gap, ${what}` : `Least left, ${what}`;
}

export function stayWords({ measure, height, lock }: Stay, unit: LengthUnit): string {
  return measuredWords(measure, height, lock, unit);
}

/** What a wish's figure is counted in. */
export function wishKind(wish: Wish, margins: readonly Margin[]): UnitKind {
  if (wish.of === 'toeChange') return 'degree';
  if (wish.of !== 'least') return measureRow(wish.measure).kind;
  const margin = margins.find(({ key }) => key === wish.key);
  return margin?.unit === 'degree' ? 'degree' : 'millimetre';
}

/** What a wish's figure is known to, one standard uncertainty: "±0.41°". */
export function knownWords(
  wish: Wish,
  known: number,
  { margins }: Pick<Design, 'margins'>,
  unit: LengthUnit,
): string {
  return spreadWords(figureStyle(wishKind(wish, margins), gapUnit(unit)), known);
}

/** What a wish's figure says beside its number: "top leans in", "towards: top leans in"; nothing for what has no sense. */
export function wishSense(wish: Wish, figure: number): string | undefined {
  if (wish.of === 'measure') return inWords(measureRow(wish.measure), figure);
  if (wish.of !== 'change' || figure === 0) return undefined;
  const words = inWords(measureRow(wish.measure), figure);
  return words === undefined ? undefined : `towards: ${words}`;
}

const PAIRS: readonly (readonly [RegExp, string])[] = [
  [/, front pivot, /, ', both pivots, '],
  [/, rear pivot, /, ', both pivots, '],
];

/** What moves: "Tie rod, inner joint, height"; "Upper arm, both pivots, height". Null where the design lacks it. */
export function moverWords(model: Model, { inputs }: Mover): string | null {
  const labels = inputs.map((key) => dimensionOf(model, key)?.label);
  if (labels.some((label) => label === undefined)) return null;
  const first = labels[0] ?? '';
  if (labels.length === 1) return first;
  const together = PAIRS.reduce((text, [known, words]) => text.replace(known, words), first);
  return together === first ? labels.join(' with ') : together;
}

/** What a mover's value is counted in. */
export function moverKind(model: Model, { inputs }: Mover): UnitKind {
  return dimensionOf(model, inputs[0] ?? '')?.unit === 'degree' ? 'degree' : 'millimetre';
}

/** How far something moves, and which way: "7.0 mm up". */
export function moveWords(
  { ways }: Dimension,
  kind: UnitKind,
  by: number,
  unit: LengthUnit,
): string {
  return `${quantityOf(kind, unit).figure(Math.abs(by))} ${ways[by > 0 ? 0 : 1]}`;
}
