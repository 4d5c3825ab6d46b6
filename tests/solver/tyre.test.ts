/** Tyre and rim arithmetic against published tables. Each value's source stands beside it. */
import { describe, expect, test } from 'vitest';
import type { Wheel } from '../../solver/model/model.ts';
import {
  backspacing,
  defaultDisc,
  defaultWheelSection,
  FLANGE_HEIGHT,
  lipDiameter,
  specifiedRimDiameter,
} from '../../solver/model/rim.ts';
import {
  loadedRadius,
  parseTyreSize,
  sizeDimensions,
  type TyreSize,
  tyreDimensions,
  tyreSection,
} from '../../solver/model/tyre.ts';

const MM_PER_INCH = 25.4;

function wheel(diameter: number, width: number, offset = 0): Wheel {
  return { diameter, width, offset };
}

function sizeOf(text: string): TyreSize {
  const result = parseTyreSize(text);
  if (!result.ok) throw new Error(`${text}: wanted ${result.wanted}`);
  return result.size;
}

/** [overall diameter, section width], mm, of a size on a rim of a width in inches. */
function onRim(text: string, rimInches: number): readonly [number, number] {
  const dimensions = sizeDimensions(sizeOf(text), rimInches * MM_PER_INCH);
  return [dimensions.overallDiameter, dimensions.sectionWidth];
}

describe('section width on other rims', () => {
  // A retailer's published ladder for 205/60R15 (tirerack.com, "rim width range"), inches to 0.01, seen in the source.
  test.each([
    [5.5, 8.03],
    [6.0, 8.23],
    [6.5, 8.43],
    [7.0, 8.63],
    [7.5, 8.83],
  ])('205/60R15 on %d in: %d in', (rim, published) => {
    // The ladder starts from a width of its own, 0.019 in above the rule's; its steps are the rule's exactly.
    expect(Math.abs(onRim('205/60R15', rim)[1] / MM_PER_INCH - published)).toBeLessThan(0.02);
    const [, width] = onRim('205/60R15', rim);
    const [, onSix] = onRim('205/60R15', 6);
    expect((width - onSix) / MM_PER_INCH).toBeCloseTo(published - 8.23, 10);
  });

  // K = 0.4, UN Regulation 30 paragraph 6.1.1.1, seen in the source; 0.4 × 12.7 mm is the trade's 0.2 in per half inch.
  test('half an inch of rim is 5.08 mm of tyre', () => {
    expect(onRim('265/70R17', 8.5)[1] - onRim('265/70R17', 8)[1]).toBeCloseTo(5.08, 10);
  });

  // P/LT265/70R17: own arithmetic, 802.8 mm and 10.71 in on an 8.0 in rim; makers print 31.6–31.7 and 10.5–10.7 in, from memory.
  test('265/70R17 on its 8 in rim', () => {
    const [diameter, width] = onRim('P265/70R17', 8);
    expect(diameter).toBeCloseTo(802.8, 10);
    expect(diameter / MM_PER_INCH).toBeCloseTo(31.61, 2);
    expect(width / MM_PER_INCH).toBeCloseTo(10.71, 2);
    expect(onRim('LT265/70R17', 8)).toEqual([diameter, width]);
  });

  // UN Regulation 30, 6.1.2 (from memory): D = d + 2H with H = 0.01·S1·Ra; belted radials keep it on any rim.
  test('the overall diameter does not change with the rim width', () => {
    expect(onRim('285/70R17', 7)[0]).toBe(onRim('285/70R17', 10)[0]);
  });
});

describe("a maker's size table", () => {
  // One maker's published table for an off-road tyre, seen in the source: size, measuring rim, diameter and width in inches to 0.1.
  // The last two columns are own arithmetic on it: diameter in mm to 0.1, width in inches to 0.01.
  const ROWS = [
    ['LT275/65R18', 8.0, 32.1, 11.0, 814.7, 11.0],
    ['LT275/70R18', 8.0, 33.2, 11.0, 842.2, 11.0],
    ['LT285/65R18', 8.5, 32.6, 11.5, 827.7, 11.48],
    ['LT285/70R17', 8.5, 32.7, 11.5, 830.8, 11.48],
    ['LT295/70R17', 8.5, 33.3, 11.8, 844.8, 11.76],
    ['275/55R20', 8.5, 31.9, 11.2, 810.5, 11.2],
    ['LT275/60R20', 8.0, 33.0, 11.0, 838.0, 11.0],
    ['LT275/65R20', 8.0, 34.1, 11.0, 865.5, 11.0],
    ['LT265/60R20', 8.0, 32.5, 10.7, 826.0, 10.71],
    ['LT285/55R20', 9.0, 32.4, 11.7, 821.5, 11.68],
    ['LT295/55R20', 9.5, 32.8, 12.2, 832.5, 12.16],
    ['285/45R22', 9.5, 32.1, 11.2, 815.3, 11.21],
  ] as const;

  test.each(ROWS)('%s on %d in', (text, rim, diameterInches, widthInches, diameter, width) => {
    const [overall, section] = onRim(text, rim);
    // Published to 0.1 in and rounded by the maker: the arithmetic lies within one unit of its last digit.
    expect(Math.abs(overall / MM_PER_INCH - diameterInches)).toBeLessThan(0.1);
    expect(Math.abs(section / MM_PER_INCH - widthInches)).toBeLessThan(0.1);
    expect(Math.abs(overall - diameter)).toBeLessThan(0.0501);
    expect(Math.abs(section / MM_PER_INCH - width)).toBeLessThan(0.00501);
  });

  // The same table's flotation rows: the published diameter is the nominal one, the width too but for the last (+0.1).
  test.each([
    ['33x12.50R17LT', 10, 33.0, 12.5],
    ['35x12.50R17LT', 10, 35.0, 12.5],
    ['37x13.50R18LT', 11, 37.0, 13.6],
  ] as const)('%s on %d in', (text, rim, diameterInches, widthInches) => {
    const [overall, section] = onRim(text, rim);
    expect(overall).toBeCloseTo(diameterInches * MM_PER_INCH, 10);
    expect(Math.abs(section / MM_PER_INCH - widthInches)).toBeLessThan(0.1 + 1e-9);
  });

  test('flotation dimensions are nominal on any rim', () => {
    expect(onRim('35x12.50R17', 8)).toEqual(onRim('35x12.50R17', 11));
  });
});

describe('the grammar of sizes', () => {
  test.each([
    ['265/70R17', { form: 'metric', service: '', width: 265, aspect: 70, rimDiameterCode: 17 }],
    ['p265/70r17', { form: 'metric', service: 'P', width: 265, aspect: 70, rimDiameterCode: 17 }],
    [
      ' LT 285 / 75 R 16 ',
      { form: 'metric', service: 'LT', width: 285, aspect: 75, rimDiameterCode: 16 },
    ],
    ['275/40ZR20', { form: 'metric', service: '', width: 275, aspect: 40, rimDiameterCode: 20 }],
    [
      '225/70R19.5LT',
      { form: 'metric', service: 'LT', width: 225, aspect: 70, rimDiameterCode: 19.5 },
    ],
    [
      '35x12.50R17LT',
      { form: 'flotation', service: 'LT', overallDiameter: 35, width: 12.5, rimDiameterCode: 17 },
    ],
    [
      '33 X 12.50-15',
      { form: 'flotation', service: '', overallDiameter: 33, width: 12.5, rimDiameterCode: 15 },
    ],
    [
      '31×10.50 R 15 lt',
      { form: 'flotation', service: 'LT', overallDiameter: 31, width: 10.5, rimDiameterCode: 15 },
    ],
    [
      '37x12.50 16.5',
      { form: 'flotation', service: '', overallDiameter: 37, width: 12.5, rimDiameterCode: 16.5 },
    ],
    [
      '3 5x1 2.50R1 7',
      { form: 'flotation', service: '', overallDiameter: 35, width: 12.5, rimDiameterCode: 17 },
    ],
  ])('%j', (text, size) => {
    expect(parseTyreSize(text)).toEqual({ ok: true, size });
  });

  const EXAMPLES = 'such as 265/70R17, LT285/75R16 or 35x12.50R17LT';
  test.each([
    ['', `a tyre size ${EXAMPLES}`],
    ['   ', `a tyre size ${EXAMPLES}`],
    ['265', `a tyre size with width, aspect and rim, ${EXAMPLES}`],
    ['265/70', `a tyre size with R and the rim's code at its end, ${EXAMPLES}`],
    ['265/70-17', `a tyre size with R before the rim's code, ${EXAMPLES}`],
    ['35x12.50', `a tyre size with R or - and the rim's code at its end, ${EXAMPLES}`],
    ['35x12.5017', `a tyre size with R or - and the rim's code at its end, ${EXAMPLES}`],
    ['265/70R17 115T', `a tyre size ${EXAMPLES}`],
    ['-265/70R17', `a tyre size ${EXAMPLES}`],
    ['0/70R17', 'a tyre size whose numbers are all above 0 and below 1e5'],
    ['265/70R100000', 'a tyre size whose numbers are all above 0 and below 1e5'],
    ['9'.repeat(100_000), `a tyre size ${EXAMPLES}`],
  ])('%j is refused', (text, wanted) => {
    expect(parseTyreSize(text)).toEqual({ ok: false, wanted });
  });
});

describe('rims', () => {
  // Specified diameters of 5° drop-centre rims: ISO 4000-2 and ETRTO, from memory.
  test.each([
    [14, 354.8],
    [15, 380.2],
    [16, 405.6],
    [17, 436.6],
    [18, 462.0],
    [19, 487.4],
    [20, 512.8],
    [22, 563.6],
  ])('code %d is %d mm', (code, diameter) => {
    expect(specifiedRimDiameter(code)).toBe(diameter);
  });

  // The table's own pattern, derived: inches less 0.8 mm up to code 16, plus 4.8 from 17.
  test.each([
    [13, 329.4],
    [21, 538.2],
    [23, 589.0],
    [24, 614.4],
  ])('code %d follows the pattern, %d mm', (code, diameter) => {
    expect(specifiedRimDiameter(code)).toBeCloseTo(diameter, 10);
  });

  // 15° drop-centre rims of half-inch codes: the code is the diameter, from memory.
  test.each([16.5, 19.5, 22.5])('code %d is its inches exactly', (code) => {
    expect(specifiedRimDiameter(code)).toBe(code * MM_PER_INCH);
  });

  // Lip diameter D + 2G with a J flange of 17.3 mm: own arithmetic on values from memory.
  test.each([
    [17, 471.2],
    [18, 496.6],
    [20, 547.4],
  ])('the lip of code %d is %d mm over', (code, diameter) => {
    expect(lipDiameter(wheel(code, 8))).toBeCloseTo(diameter, 10);
  });

  // (width + 1 in)/2 + offset: own arithmetic; the 1 in is trade practice, from memory.
  test.each([
    [8.0, 10, 4.894],
    [7.5, 30, 5.431],
    [8.5, 0, 4.75],
    [9.0, -12, 4.528],
  ])('%d in wide, offset %d mm: backspacing %d in', (width, offset, inches) => {
    expect(Math.abs(backspacing(wheel(17, width, offset)) / MM_PER_INCH - inches)).toBeLessThan(
      0.00051,
    );
  });
});

describe("a model's tyre on its wheel", () => {
  test('a size follows the rim it is on', () => {
    expect(tyreDimensions({ size: '265/70R17' }, wheel(17, 9))).toEqual({
      overallDiameter: 802.8,
      sectionWidth: 265 + 0.4 * (9 * MM_PER_INCH - 0.7 * 265),
      rimDiameterCode: 17,
      form: 'metric',
    });
  });

  test('stated dimensions are taken as they stand', () => {
    expect(tyreDimensions({ diameter: 790, width: 250 }, wheel(17, 9))).toEqual({
      overallDiameter: 790,
      sectionWidth: 250,
      form: 'stated',
    });
  });

  test('the loaded radius is the stated one, or 0.96 of half the diameter (common practice)', () => {
    expect(loadedRadius({ size: '265/70R17', loadedRadius: 388 }, wheel(17, 8))).toBe(388);
    expect(loadedRadius({ diameter: 800, width: 250 }, wheel(17, 8))).toBeCloseTo(384, 10);
  });

  test('its section is the contract’s polygon, mirrored in the wheel centre plane', () => {
    const section = tyreSection({ diameter: 800, width: 260 }, wheel(17, 8));
    const lip = 436.6 / 2 + FLANGE_HEIGHT;
    const expected = [
      [78, 400],
      [109.2, 392],
      [130, (lip + 400) / 2],
      [101.6, lip],
    ];
    expect(section).toHaveLength(8);
    expected.forEach(([s = 0, radius = 0], index) => {
      const [outer, inner] = [section[4 + index], section[3 - index]];
      expect(outer?.[0]).toBeCloseTo(s, 10);
      expect(inner?.[0]).toBeCloseTo(-s, 10);
      expect(outer?.[1]).toBeCloseTo(radius, 10);
      expect(inner?.[1]).toBeCloseTo(radius, 10);
    });
  });
});

describe("a wheel's default section", () => {
  test('is the contract’s, symmetric, with half its metal inside lip and barrel', () => {
    const section = defaultWheelSection({ ...wheel(17, 8, 45), thickness: 4 });
    const expected = [
      [-(101.6 + 12.7) + 2, 218.3 + 17.3 - 2],
      [-101.6, 218.3 - 2],
      [-101.6 + 22, 218.3 - 2],
      [-101.6 + 34, 218.3 - 17],
    ];
    expect(section).toHaveLength(8);
    expected.forEach(([s = 0, radius = 0], index) => {
      const [inner, outer] = [section[index], section[7 - index]];
      expect(inner?.[0]).toBeCloseTo(s, 10);
      expect(outer?.[0]).toBeCloseTo(-s, 10);
      expect(inner?.[1]).toBeCloseTo(radius, 10);
      expect(outer?.[1]).toBeCloseTo(radius, 10);
    });
  });

  test('reaches one lip diameter and one backspacing with its metal, 6 mm thick by default', () => {
    const rim = wheel(18, 8.5, 10);
    const [edge = [0, 0] as const] = defaultWheelSection(rim);
    expect(2 * (edge[1] + 3)).toBeCloseTo(lipDiameter(rim), 10);
    expect(-(edge[0] - 3) + rim.offset).toBeCloseTo(backspacing(rim), 10);
  });

  test('has a disc from the mounting face to the barrel', () => {
    expect(defaultDisc(wheel(17, 8, 45))).toEqual([
      [45, 60],
      [101.6 - 34, 218.3 - 17],
    ]);
  });
});
