/** Figures cut to what is known, and the ± beside them. */
import { describe, expect, test } from 'vitest';
import { figureNumber, figureSteps, figureStyle } from '../../src/words/figures.ts';
import { knownFigure, spreadWords } from '../../src/words/known.ts';

const DEGREE = figureStyle('degree', 'mm');
const LENGTH = figureStyle('millimetre', 'mm');

describe('knownFigure', () => {
  // The examples' rounding rule is JCGM 100:2008, 7.2.6; the choice of one digit from 3 up is common practice, no source.
  test.each([
    [DEGREE, 5.0321, 0.554, '5.0', '±0.6'],
    [DEGREE, 5.0321, 0.144, '5.03', '±0.14'],
    [DEGREE, 5.0321, 0.0312, '5.03', '±0.03'],
    [DEGREE, 5.0321, 1.26, '5.0', '±1.3'],
    [DEGREE, 5.0321, 0.0021, '5.03', ''],
    [LENGTH, 1234.56, 23.4, '1235', '±23'],
    [LENGTH, 1234.56, 312, '1200', '±300'],
    [LENGTH, -14.26, 4.1, '−14', '±4'],
    [LENGTH, 14.26, 0.96, '14', '±1'],
  ])('%#: %f known to %f', (plain, value, uncertainty, text, spread) => {
    const known = knownFigure(plain, uncertainty)!;
    expect(figureNumber(figureSteps(value, known.figure), known.figure)).toBe(text);
    expect(known.spread).toBe(spread);
  });

  test('takes rates and inches in the unit shown', () => {
    const rate = figureStyle('degreePerMm', 'inch');
    expect(knownFigure(rate, 0.07 / 25.4)?.spread).toBe('±0.07');
    const sixteenth = figureStyle('millimetre', 'sixteenth');
    const known = knownFigure(sixteenth, 5)!;
    expect(known.spread).toBe('±3/16');
    expect(figureNumber(figureSteps(40, known.figure), known.figure)).toBe('1 5/8');
  });

  test('says nothing where nothing is known of it', () => {
    expect(knownFigure(DEGREE, Number.NaN)).toBeUndefined();
    expect(knownFigure(DEGREE, 0)).toBeUndefined();
    expect(knownFigure(DEGREE, Number.POSITIVE_INFINITY)).toBeUndefined();
  });
});

test('spreadWords keeps two significant digits, however small', () => {
  expect(spreadWords(DEGREE, 0.00234)).toBe('±0.0023°');
  expect(spreadWords(LENGTH, 41.7)).toBe('±42 mm');
  expect(spreadWords(DEGREE, 0)).toBe('±0°');
});
