/** What a mistyped tyre size is read as. The series are ISO 4000-1's, ETRTO's and the American yearbooks', from memory. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestReading } from '../../solver/fitment/nearestReading.ts';
import { offSeries, writtenSize } from '../../solver/fitment/sizeSeries.ts';
import { parseTyreSize, type TyreSize } from '../../solver/model/tyre.ts';

function nearOf(text: string, rimCode?: number): string {
  const reading = nearestReading(text, rimCode);
  if (reading.kind === 'near') return `${reading.text}: ${reading.why}`;
  return reading.kind === 'size' ? 'as written' : `none: ${reading.why}`;
}

describe('a size that is one', () => {
  test.each([
    '265/70R17',
    'lt 285/75 r16',
    'P235/75R15',
    '275/40ZR20',
    '35x12.50R17LT',
    '37x13.5R18',
    '31x10.50-15',
    '225/70R19.5',
  ])('%s is taken as written', (text) => {
    expect(nearestReading(text).kind).toBe('size');
  });

  // Every row of one maker's published table, seen in the source, is on the series.
  test.each([
    'LT275/65R18',
    'LT275/70R18',
    'LT285/65R18',
    'LT285/70R17',
    'LT295/70R17',
    '275/55R20',
    'LT275/60R20',
    'LT275/65R20',
    'LT265/60R20',
    'LT285/55R20',
    'LT295/55R20',
    '285/45R22',
    '33x12.50R17LT',
    '35x12.50R17LT',
    '37x13.50R18LT',
  ])('%s is made', (text) => {
    expect(nearestReading(text).kind).toBe('size');
  });
});

describe('the nearest reading of', () => {
  test.each([
    ['35x12.5x17', '35x12.50R17', /R stands before the rim’s code/],
    ['265/70/17', '265/70R17', /R stands before the rim’s code/],
    ['LT285/75-16', 'LT285/75R16', /R stands before the rim’s code/],
    ['33 12.50 15', '33x12.50R15', /R stands before the rim’s code/],
    ['P265 70 17', 'P265/70R17', /R stands before the rim’s code/],
    ['275 / 65 18 LT', 'LT275/65R18', /R stands before the rim’s code/],
    ['70/265R17', '265/70R17', /the order is width in mm, aspect, rim code/],
    ['265/17R70', '265/70R17', /the order is width in mm, aspect, rim code/],
    ['17/265/70', '265/70R17', /the order is width in mm, aspect, rim code/],
    ['12.50x33R15', '33x12.50R15', /the order is diameter, width, rim code, all in inches/],
    ['265/71R17', '265/70R17', /aspects in fives, from 25 to 90/],
    ['267/70R17', '265/70R17', /section widths that end in 5/],
    ['265/70R17.2', '265/70R17', /rim codes 10 to 30/],
    ['35.2x12.50R17', '35x12.50R17', /diameters in halves of an inch/],
    ['265/7R17', '265/70R17', /ten or a hundred times off/],
    ['265/700R17', '265/70R17', /ten or a hundred times off/],
    ['35x1250R17', '35x12.50R17', /ten or a hundred times off/],
    ['35x125R17', '35x12.50R17', /ten or a hundred times off/],
    ['2657017', '265/70R17', /its numbers run together/],
    ['265/7017', '265/70R17', /its numbers run together/],
    ['35x12.5017', '35x12.50R17', /its numbers run together/],
    ['35125017', '35x12.50R17', /its numbers run together/],
    ['265/70R17 115T', '265/70R17', /what follows the rim’s code is no part of the size/],
    ['LT285/75R16 126/123Q', 'LT285/75R16', /what follows the rim’s code is no part of the size/],
    ['265x70R17', '265/70R17', /a metric size is written width\/aspect R rim/],
    ['35/12.50R17', '35x12.50R17', /a flotation size is written diameter x width R rim/],
    ['33x12,50R15', '33x12.50R15', /its decimals follow a point, not a comma/],
    ['265/70', '265/70R17', /the rim’s code is missing; the wheel’s is 17/],
    ['35x12.5', '35x12.50R17', /the rim’s code is missing; the wheel’s is 17/],
  ])('%s is %s', (text, nearest, why) => {
    const answer = nearOf(text, 17);
    expect(answer.startsWith(`${nearest}: There is no size written “${text}”: `)).toBe(true);
    expect(answer).toMatch(why);
  });

  test.each([
    ['35R17', /lacks a number/],
    ['35x17', /lacks a number/],
    ['265R17', /lacks a number/],
    ['265/70', /lacks a number/],
    ['abc', /is written width\/aspect R rim/],
    ['', /is written width\/aspect R rim/],
    ['12/5R5', /is near no size/],
    ['9'.repeat(100_000), /is near no size/],
  ])('%j is none', (text, why) => {
    const reading = nearestReading(text);
    expect(reading.kind).toBe('none');
    expect(reading.kind === 'none' && reading.why).toMatch(why);
  });
});

const metric: fc.Arbitrary<TyreSize> = fc.record({
  form: fc.constant('metric' as const),
  service: fc.constantFrom('P' as const, 'LT' as const, '' as const),
  width: fc.integer({ min: 0, max: 27 }).map((count) => 125 + 10 * count),
  aspect: fc.integer({ min: 0, max: 13 }).map((count) => 25 + 5 * count),
  rimDiameterCode: fc.constantFrom(13, 14, 15, 16, 17, 18, 19, 20, 22),
});

const flotation: fc.Arbitrary<TyreSize> = fc.record({
  form: fc.constant('flotation' as const),
  service: fc.constantFrom('LT' as const, '' as const),
  overallDiameter: fc.integer({ min: 60, max: 84 }).map((count) => count / 2),
  width: fc.integer({ min: 17, max: 29 }).map((count) => count / 2),
  rimDiameterCode: fc.constantFrom(15, 16, 17, 18, 20),
});

describe('every size of the series', () => {
  const options = { seed: 20261125, numRuns: 300 };

  test('reads as written', () => {
    fc.assert(
      fc.property(fc.oneof(metric, flotation), (size) => {
        expect(offSeries(size)).toEqual([]);
        expect(nearestReading(writtenSize(size))).toEqual({ kind: 'size', size });
      }),
      options,
    );
  });

  test('is found again with a stroke, a cross or a blank for its R', () => {
    fc.assert(
      fc.property(fc.oneof(metric, flotation), fc.constantFrom('/', 'x', ' '), (size, mark) => {
        const reading = nearestReading(writtenSize(size).replace('R', mark));
        const isBlankFlotation = size.form === 'flotation' && mark === ' ';
        if (isBlankFlotation) expect(reading).toEqual({ kind: 'size', size });
        else expect(reading.kind === 'near' && reading.size).toEqual(size);
      }),
      options,
    );
  });

  test('and whatever is answered is a size that can be taken', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789/xR. -PLT') }), (text) => {
        const reading = nearestReading(text, 17);
        if (reading.kind !== 'near') return;
        expect(parseTyreSize(reading.text)).toEqual({ ok: true, size: reading.size });
        expect(nearestReading(reading.text).kind).toBe('size');
        expect(reading.asWritten).toBe(parseTyreSize(text).ok);
      }),
      { ...options, numRuns: 2000 },
    );
  });
});
