import { expect, it } from 'vitest';
import { insetsOf } from '../../src/panels/insets.ts';

const top = { top: 0, right: 1440, bottom: 44, left: 0 };
const readings = { top: 54, right: 1430, bottom: 760, left: 1130 };
const map = { top: 584, right: 342, bottom: 890, left: 10 };
const foot = { top: 710, right: 1100, bottom: 896, left: 352 };

it('takes the corner panel as left edge or bottom edge, by what leaves the roomier square', () => {
  const wide = { width: 1440, height: 900 };
  expect(insetsOf({ ...wide, at: { top, readings, map, foot } })).toEqual({
    top: 44,
    right: 310,
    bottom: 190,
    left: 342,
  });
  const tall = { width: 800, height: 1400 };
  const low = { top: 1084, right: 342, bottom: 1390, left: 10 };
  expect(insetsOf({ ...tall, at: { top, map: low } })).toEqual({
    top: 44,
    right: 0,
    bottom: 316,
    left: 0,
  });
});

it('frees the edges whose panels are put away, and gives a phone what is above its sheet', () => {
  expect(insetsOf({ width: 1440, height: 900, at: { top, foot } })).toEqual({
    top: 44,
    right: 0,
    bottom: 190,
    left: 0,
  });
  const sheet = { top: 354, right: 390, bottom: 844, left: 0 };
  expect(insetsOf({ width: 390, height: 844, at: { top, sheet } })).toEqual({
    top: 44,
    right: 0,
    bottom: 490,
    left: 0,
  });
});
