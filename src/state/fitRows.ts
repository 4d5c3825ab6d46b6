/** Readings as they are typed: every text stays with the unit of length it was typed in, whatever becomes of it. */

import { POINT_TABLE, type ReadPoint, readPoints } from '../../solver/fit/points.ts';
import {
  canBeRead,
  READ_TABLE,
  type Reading,
  type ReadQuantity,
} from '../../solver/fit/reading.ts';
import type { Model } from '../../solver/index.ts';
import { rackRange, rideTravel } from '../../solver/model/defaults.ts';
import { type Entered, enteredAngle, enteredLength } from '../words/entry.ts';
import type { LengthUnit } from './view.ts';

export const CELLS = ['travel', 'rack', 'value', 'plusMinus'] as const;
export type CellName = (typeof CELLS)[number];

export interface Cell {
  readonly text: string;
  /** What lengths were shown in when it was typed. */
  readonly unit: LengthUnit;
}

export interface FitRow {
  readonly id: number;
  readonly quantity: ReadQuantity;
  /** Left empty: at ride height; straight ahead. */
  readonly travel: Cell;
  readonly rack: Cell;
  readonly value: Cell;
  readonly plusMinus: Cell;
  /** For a length between points; what other quantities do not ask for is kept all the same. */
  readonly between: readonly [ReadPoint, ReadPoint];
  /** Typed, kept, and not fitted to: to see what the rest says without it. */
  readonly isLeftOut: boolean;
}

/** ± of readings to begin with, degrees or mm. Common practice, no source; each is typed over. */
const USUAL_PLUS_MINUS: Readonly<Record<ReadQuantity, number>> = {
  toe: 0.05,
  toeChange: 0.03,
  camber: 0.1,
  caster: 0.3,
  kingpinInclination: 0.3,
  steerAngle: 0.5,
  damperLength: 1,
  distance: 1,
  width: 1.5,
};

export function isLength(quantity: ReadQuantity): boolean {
  return READ_TABLE[quantity].unit === 'millimetre';
}

/** Whether points of the corner are chosen for it. */
export function isBetween(quantity: ReadQuantity): boolean {
  return quantity === 'distance' || quantity === 'width';
}

/** The cells that a quantity asks for. */
export function asksFor(quantity: ReadQuantity, name: CellName): boolean {
  return name !== 'rack' || quantity === 'steerAngle';
}

/** A row to begin with: at ride height, a steer angle at full left lock, the usual ±, nothing read yet. */
export function newRow(id: number, quantity: ReadQuantity, model: Model): FitRow {
  const mm = (text: string): Cell => ({ text, unit: 'mm' });
  const lock = rackRange(model.steering)[1];
  return {
    id,
    quantity,
    travel: mm(''),
    rack: mm(quantity === 'steerAngle' && lock > 0 ? String(lock) : ''),
    value: mm(''),
    plusMinus: mm(String(USUAL_PLUS_MINUS[quantity])),
    between: ['lowerFrontPivot', 'lowerBallJoint'],
    isLeftOut: false,
  };
}

export type ReadRow =
  | { readonly ok: true; readonly reading: Reading }
  /** `cell` is what stands in the way, null where it is the row as a whole; without `why` nothing is wrong, it is only not typed yet. */
  | { readonly ok: false; readonly cell: CellName | null; readonly why: string | null };

/** Further from the design pose than this, mm, no wheel or rack moves: a slip of the keys. */
const FARTHEST = 2000;
const LONGEST = 20_000;
const STEEPEST = 90;
/** Nothing on a vehicle is read finer, mm or degrees; far finer ones would drown everything else in rounding. */
const FINEST = 1e-4;
const TOO_FINE = `Write at least ${FINEST}: nothing is read exactly.`;

function lengthIn({ text, unit }: Cell, usual: number): Entered {
  return text.trim() === '' ? { ok: true, value: usual } : enteredLength(text, unit);
}

function amountIn(quantity: ReadQuantity, { text, unit }: Cell): Entered {
  return isLength(quantity) ? enteredLength(text, unit) : enteredAngle(text);
}

function whyNot(quantity: ReadQuantity, name: CellName, value: number): string | null {
  if (name === 'travel' || name === 'rack') {
    return Math.abs(value) > FARTHEST ? `No wheel or rack moves by ${FARTHEST} mm or more.` : null;
  }
  if (name === 'plusMinus' && value < FINEST) return TOO_FINE;
  if (!isLength(quantity)) {
    return Math.abs(value) > STEEPEST ? `Write degrees, at most ${STEEPEST}.` : null;
  }
  if (!(value > 0)) return 'A length is more than 0.';
  return value > LONGEST ? `Write a length below ${LONGEST / 1000} m.` : null;
}

function enteredIn(row: FitRow, name: CellName, model: Model): Entered {
  const { quantity } = row;
  if (name === 'travel') return lengthIn(row.travel, rideTravel(model.travel));
  return name === 'rack' ? lengthIn(row.rack, 0) : amountIn(quantity, row[name]);
}

function wholeRow({ quantity, between: [one, other] }: FitRow, model: Model): string | null {
  if (!canBeRead(model, quantity)) return 'This design has no coilover to read it off.';
  if (!isBetween(quantity)) return null;
  const asked = quantity === 'width' ? [one] : [one, other];
  if (quantity === 'distance' && one === other) return 'Choose two points that are not the same.';
  const has = readPoints(model);
  const lacks = asked.find((point) => !has.includes(point));
  return lacks === undefined ? null : `This design has no ${POINT_TABLE[lacks].label}.`;
}

/** What a row says of a model's corner, or the first thing that keeps it from saying anything. */
export function readRow(row: FitRow, model: Model): ReadRow {
  const { quantity, between } = row;
  const unfit = wholeRow(row, model);
  if (unfit !== null) return { ok: false, cell: null, why: unfit };
  const numbers: Record<CellName, number> = { travel: 0, rack: 0, value: 0, plusMinus: 0 };
  for (const name of CELLS.filter((cell) => asksFor(quantity, cell))) {
    if (name === 'value' && row.value.text.trim() === '') {
      return { ok: false, cell: name, why: null };
    }
    const entered = enteredIn(row, name, model);
    const why = entered.ok ? whyNot(quantity, name, entered.value) : entered.why;
    if (!entered.ok || why !== null) return { ok: false, cell: name, why };
    numbers[name] = entered.value;
  }
  const reading = { quantity, ...numbers };
  return { ok: true, reading: isBetween(quantity) ? { ...reading, between } : reading };
}

/** How well heights are known to begin with, mm. Common practice, no source; it is typed over. */
export const USUAL_HEIGHTS: Cell = { text: '1', unit: 'mm' };

/** How well heights are known, mm; left empty, exactly. */
export function readHeights(cell: Cell): Entered {
  const entered = lengthIn(cell, 0);
  if (!entered.ok) return entered;
  if (entered.value < 0) return { ok: false, why: 'A ± is 0 or more.' };
  return entered.value > FARTHEST ? { ok: false, why: `Write less than ${FARTHEST} mm.` } : entered;
}
