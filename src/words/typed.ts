/** Lengths as people type them: "-20", "−20", "0.75", "1 1/2", with or without the unit's name. */
import type { LengthUnit } from '../state/view.ts';
import { fromShown } from './format.ts';

const LENGTH = /^([+-]?)(?:(\d+(?:[.,]\d*)?|[.,]\d+)(?:[ -](\d+)\/(\d+))?|(\d+)\/(\d+))$/;

function numberOf(text: string | undefined): number {
  return text === undefined ? 0 : Number(text.replace(',', '.'));
}

/** The length typed, mm; null when it is none. A name typed after it ("mm", "in", a double prime) rules over `unit`. */
export function typedLength(text: string, unit: LengthUnit): number | null {
  const plain = text.trim().toLowerCase().replaceAll('−', '-').replace(/\s+/g, ' ');
  const named = /^(.*?) ?(mm|in|inch|inches|"|″)$/.exec(plain);
  const [, sign, whole, top, bottom, loneTop, loneBottom] = LENGTH.exec(named?.[1] ?? plain) ?? [];
  if (sign === undefined) return null;
  const under = bottom ?? loneBottom;
  const fraction = under === undefined ? 0 : Number(top ?? loneTop) / Number(under);
  const size = numberOf(whole) + fraction;
  if (!Number.isFinite(size)) return null;
  const shownIn = named === null ? unit : named[2] === 'mm' ? 'mm' : 'inch';
  return fromShown(sign === '-' ? -size : size, shownIn);
}
