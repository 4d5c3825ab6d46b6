import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enteredLength, enteredNumber } from '../../src/words/entry.ts';

const value = (text: string, unit: 'mm' | 'inch' | 'sixteenth' = 'mm') => {
  const entered = enteredLength(text, unit);
  return entered.ok ? entered.value : entered.why;
};

describe('a typed length', () => {
  it.each<[string, 'mm' | 'inch' | 'sixteenth', number]>([
    ['12.5', 'mm', 12.5],
    [' -12,5 ', 'mm', -12.5],
    ['−3', 'mm', -3],
    ['.5', 'mm', 0.5],
    ['1e2', 'mm', 100],
    ['12 mm', 'inch', 12],
    ['1', 'inch', 25.4],
    ['3 1/2', 'sixteenth', 88.9],
    ['3-1/2 in', 'mm', 88.9],
    ['-1/16"', 'mm', -1.5875],
    ['30.625', 'inch', 777.875],
    [' +7,5 ', 'mm', 7.5],
    ['-1-1/2', 'inch', -38.1],
    ['3/16', 'inch', 4.7625],
    ['2″', 'mm', 50.8],
  ])('%j with %s shown is %d mm', (text, unit, mm) => {
    expect(value(text, unit)).toBe(mm);
  });

  it.each<[string, string]>([
    ['', 'Write a number.'],
    ['abc', '“abc” is not a number.'],
    ['1 2', '“1 2” is not a number.'],
    ['1/0', '“1/0” is not a number.'],
    ['mm', '“mm” is not a number.'],
    ['1 1/', '“1 1/” is not a number.'],
    ['--1', '“--1” is not a number.'],
    ['Infinity', '“Infinity” is not a number.'],
    ['12°', '“12°” is not a length.'],
    ['3,550', 'Write 3.550 or 3550: a comma before three digits can be read both ways.'],
  ])('%j is refused in words', (text, why) => {
    expect(value(text)).toBe(why);
  });

  it('is a number or a sentence, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const entered = enteredNumber(text);
        if (entered.ok) expect(Number.isFinite(entered.value)).toBe(true);
        else expect(entered.why).toMatch(/\.$|ways\.$/);
      }),
    );
  });

  it('is read back as it was written', () => {
    fc.assert(
      fc.property(fc.integer({ min: -99_999_999, max: 99_999_999 }), (thousandths) => {
        const number = thousandths / 1000;
        expect(enteredNumber(String(number))).toEqual({ ok: true, value: number });
      }),
    );
  });
});
