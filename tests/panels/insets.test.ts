import { expect, it } from 'vitest';
import { type Edges, insetsOf } from '../../src/panels/insets.ts';

const top: Edges = { top: 0, right: 1440, bottom: 46, left: 0 };
const readings: Edges = { top: 56, right: 1430, bottom: 890, left: 1130 };
const rail: Edges = { top: 56, right: 1130, bottom: 380, left: 1066 };
const map: Edges = { top: 584, right: 342, bottom: 890, left: 10 };
const points: Edges = { top: 56, right: 342, bottom: 574, left: 10 };
const foot: Edges = { top: 710, right: 1056, bottom: 896, left: 416 };

function expectFree(width: number, height: number, covering: readonly Edges[]): number {
  const insets = insetsOf(width, height, covering);
  const free = {
    left: insets.left,
    top: insets.top,
    right: width - insets.right,
    bottom: height - insets.bottom,
  };
  for (const { left, right, top: above, bottom } of covering) {
    const isApart =
      right <= free.left || left >= free.right || bottom <= free.top || above >= free.bottom;
    expect(isApart, JSON.stringify({ free, left, right })).toBe(true);
  }
  return Math.min(free.right - free.left, free.bottom - free.top);
}

it('frees what no panel covers, in the rectangle that is roomiest for a corner', () => {
  const covering = [top, readings, rail, map, foot];
  expect(insetsOf(1440, 900, covering)).toEqual({ top: 46, right: 374, bottom: 190, left: 342 });
  expect(expectFree(1440, 900, covering)).toBe(664);
  expect(expectFree(1440, 900, [...covering, points])).toBe(664);
  // Without the map the corner may stand further left.
  expect(insetsOf(1440, 900, [top, readings, rail, foot]).left).toBe(0);
});

it('goes above a panel in a corner where that is roomier than beside it', () => {
  const low: Edges = { top: 1084, right: 342, bottom: 1390, left: 10 };
  const strip: Edges = { top: 0, right: 800, bottom: 46, left: 0 };
  expect(insetsOf(800, 1400, [strip, low])).toEqual({ top: 46, right: 0, bottom: 316, left: 0 });
});

it('gives a phone what is above its sheet, and beside it', () => {
  const strip: Edges = { top: 0, right: 390, bottom: 46, left: 0 };
  const sheet: Edges = { top: 354, right: 390, bottom: 844, left: 0 };
  expect(insetsOf(390, 844, [strip, sheet])).toEqual({ top: 46, right: 0, bottom: 490, left: 0 });
  const beside: Edges = { top: 46, right: 844, bottom: 390, left: 460 };
  const wide: Edges = { top: 0, right: 844, bottom: 46, left: 0 };
  expect(insetsOf(844, 390, [wide, beside])).toEqual({ top: 46, right: 384, bottom: 0, left: 0 });
});

it('is the whole window where nothing is open', () => {
  expect(insetsOf(1000, 700, [])).toEqual({ top: 0, right: 0, bottom: 0, left: 0 });
});
