import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enteredAngle, enteredLength, enteredNumber } from '../../src/words/entry.ts';

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
    // Fractions, with and without their unit, in every way they are written.
    ['14 3/8', 'inch', 365.125],
    ['14-3/8"', 'mm', 365.125],
    ['14 3/8"', 'mm', 365.125],
    ['14-3/8 in', 'mm', 365.125],
    ['14 3/8 in.', 'mm', 365.125],
    ['14 3/8 inches', 'mm', 365.125],
    ["14 3/8''", 'mm', 365.125],
    ['14 3⁄8”', 'mm', 365.125],
    ['14⅜', 'inch', 365.125],
    ['14 ⅜"', 'mm', 365.125],
    ['14+3/8', 'inch', 365.125],
    ['14 + 3/8', 'inch', 365.125],
    ['3/8+14', 'inch', 365.125],
    ['3/16+2', 'inch', 55.5625],
    ['3/16 + 2"', 'mm', 55.5625],
    ['2" + 3/16', 'mm', 55.5625],
    ['2"+3/16"', 'mm', 55.5625],
    ['-14 3/8', 'inch', -365.125],
    ['- 14 3/8', 'inch', -365.125],
    ['−14⅜″', 'mm', -365.125],
    ['½', 'inch', 12.7],
    ['-¼"', 'mm', -6.35],
    ['9/8', 'inch', 28.575],
    ['23/64"', 'mm', 9.128125],
    ['14.375in', 'mm', 365.125],
    ['14,375"', 'mm', Number.NaN],
    ['14,37"', 'mm', 364.998],
    // Feet.
    ["1' 2 3/8", 'mm', 365.125],
    ['1\' 2 3/8"', 'mm', 365.125],
    ['1\'2-3/8"', 'mm', 365.125],
    ['1\'-2 3/8"', 'mm', 365.125],
    ['1\' - 2 3/8"', 'mm', Number.NaN],
    ["1'", 'mm', 304.8],
    ['1 ft 2 in', 'mm', 355.6],
    ['1ft 2in', 'mm', 355.6],
    ['1 foot', 'mm', 304.8],
    ['6 feet 1/2 inch', 'mm', 1841.5],
    ['1′ 2 3/8″', 'mm', 365.125],
    ['1’ 2⅜”', 'mm', 365.125],
    ['-1\' 2"', 'mm', -355.6],
    ["1.5'", 'mm', 457.2],
    ["5'+3", 'mm', 1600.2],
    // Metric.
    ['365.1 mm', 'inch', 365.1],
    ['365.1mm', 'inch', 365.1],
    ['365,1 mm', 'inch', 365.1],
    ['36.5 cm', 'inch', 365],
    ['36,5cm', 'mm', 365],
    ['0.365 m', 'inch', 365],
    ['0,5', 'mm', 0.5],
    ['12.3456789', 'mm', 12.3456789],
    ['1,234.5', 'mm', 1234.5],
    ['1.234,5', 'mm', 1234.5],
    ['12,345.6 mm', 'inch', 12345.6],
    ['100 + 12.5', 'mm', 112.5],
    ['100 mm + 1/2"', 'mm', 112.7],
    ['1/2" + 100 mm', 'inch', 112.7],
    ['5. mm', 'inch', 5],
    ['1e-3', 'mm', 0.001],
    ['+14 3/8', 'inch', 365.125],
    ['1 / 2', 'inch', Number.NaN],
  ])('%j with %s shown is %d mm', (text, unit, mm) => {
    if (Number.isNaN(mm)) expect(value(text, unit)).toEqual(expect.any(String));
    else expect(value(text, unit)).toBeCloseTo(mm, 9);
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
    ["1° 30'", "“1° 30'” is not a length."],
    ['5 - 1/4', '“5 - 1/4” is not a number.'],
    ['5-1.25', '“5-1.25” is not a number.'],
    ['2 in 3', '“2 in 3” is not a number.'],
    ['14.5 3/8', '“14.5 3/8” is not a number.'],
    ['1/2/3', '“1/2/3” is not a number.'],
    ['3 + ', '“3 +” is not a number.'],
    ['2 "" ', '“2 ""” is not a number.'],
    ['12 parsecs', '“12 parsecs” is not a number.'],
    [
      '-3,550 mm',
      'Write -3.550 mm or -3550 mm: a comma before three digits can be read both ways.',
    ],
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

describe('a typed angle', () => {
  it.each<[string, number]>([
    ['1.5', 1.5],
    ['1,5°', 1.5],
    ["1° 30'", 1.5],
    ['1°30′', 1.5],
    ['1° 30\' 36"', 1.51],
    ['1 deg 30 min', 1.5],
    ["-0° 15'", -0.25],
    ["−0°15'", -0.25],
    ['1° 30', 1.5],
    ["1°-30'", 1.5],
    ["45'", 0.75],
    ['90 min', 1.5],
    ['1/4°', 0.25],
    ['1 1/4°', 1.25],
    ['3¾', 3.75],
    ['2 degrees', 2],
    ['12\' 36"', 0.21],
    ['36 sec', 0.01],
    ["0.5' ", 1 / 120],
    ['+2', 2],
  ])('%j is %d degrees', (text, degrees) => {
    const entered = enteredAngle(text);
    expect(entered.ok ? entered.value : entered.why).toBeCloseTo(degrees, 12);
    if (text.includes('°')) expect(enteredNumber(text)).toEqual(entered);
  });

  it.each(['1 mm', '1° 2° 3', '1" 2', '1°30 40', 'x'])('%j is refused in words', (text) => {
    expect(enteredAngle(text)).toEqual({ ok: false, why: `“${text}” is not a number.` });
  });
});

describe('an entry in feet, inches and sixteenths, or degrees and minutes', () => {
  const spaces = fc.constantFrom('', ' ');
  it('is what was meant, however it is spaced and signed', () => {
    fc.assert(
      fc.property(
        fc.boolean(),
        fc.nat(40),
        fc.nat(11),
        fc.integer({ min: 1, max: 15 }),
        fc.constantFrom(' ', '-', '+', ' + '),
        fc.constantFrom("'", '′', 'ft', ' ft', ' feet'),
        fc.constantFrom('"', '″', "''", ' in', 'inch', ''),
        (isLess, feet, inches, sixteenths, join, foot, inch) => {
          const text = `${isLess ? '-' : ''}${feet}${foot} ${inches}${join}${sixteenths}/16${inch}`;
          const size = (feet * 12 + inches + sixteenths / 16) * 25.4;
          expect(value(text), text).toBeCloseTo(isLess ? -size : size, 6);
        },
      ),
    );
  });

  it('of an angle likewise', () => {
    fc.assert(
      fc.property(
        fc.nat(89),
        fc.nat(59),
        spaces,
        fc.boolean(),
        (degrees, minutes, space, isLess) => {
          const entered = enteredAngle(`${isLess ? '−' : ''}${degrees}°${space}${minutes}'`);
          const size = degrees + minutes / 60;
          expect(entered.ok && entered.value).toBeCloseTo(isLess ? -size : size, 12);
        },
      ),
    );
  });
});
