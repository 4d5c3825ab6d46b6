/** Designs compared: where, what, and in which words. */
import { describe, expect, it, test } from 'vitest';
import {
  assemble,
  COMPARED_ROWS,
  type ComparedKey,
  comparedCell,
  comparisonCsv,
  differenceWords,
  measureDesign,
  poseReport,
  STATION_LABELS,
  STATIONS,
  type Station,
  unreachedWords,
} from '../../solver/index.ts';
import { parseCsv } from '../support/csv.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped, sound } from '../support/models.ts';

const FACTORY = shipped('half-ton-factory');
const LONG = shipped('half-ton-long-travel');

const row = (key: ComparedKey) => COMPARED_ROWS.find((each) => each.key === key)!;

describe('stations', () => {
  test.each(SHIPPED)(
    '%s: the ends of its own travel, and locks that steer to their side',
    (name) => {
      const { model, stations } = measureDesign(shipped(name));
      const { bump, droop, ride = 0 } = model.travel;
      expect(stations.ride.place).toEqual({ travel: ride, rack: 0 });
      expect(stations.fullBump.place).toEqual({ travel: bump, rack: 0 });
      expect(stations.fullDroop.place).toEqual({ travel: -droop, rack: 0 });
      const ends = [stations.leftLock.place!.rack, stations.rightLock.place!.rack];
      expect(ends.sort((a, b) => a - b)).toEqual(model.steering!.limit);
      expect(stations.leftLock.values.get('steerAngle')).toBeGreaterThan(1);
      expect(stations.rightLock.values.get('steerAngle')).toBeLessThan(-1);
    },
  );

  it('have no locks where the model states no steering limit', () => {
    const { limit: _, ...steering } = FACTORY.steering!;
    const design = measureDesign(sound({ ...FACTORY, steering }));
    expect(comparedCell(design, 'leftLock', row('camber'))).toBe('no lock stated');
    expect(unreachedWords(design, 'leftLock')).toBe('no steering limit stated');
    expect(comparedCell(design, 'ride', row('camber'))).toBeTypeOf('number');
  });
});

describe('numbers', () => {
  it('are those of the pose’s own report, at every station', () => {
    const design = measureDesign(FULL_MODEL);
    const corner = assemble(FULL_MODEL);
    for (const station of STATIONS) {
      const { travel, rack } = design.stations[station].place!;
      const report = poseReport(corner, travel, rack) as unknown as Record<string, unknown>;
      for (const { key } of COMPARED_ROWS) {
        const said = report[key];
        if (typeof said === 'number') expect(comparedCell(design, station, row(key))).toBe(said);
      }
    }
    expect.assertions(STATIONS.length * 25);
  });

  it('move as common practice has it: a wheel 10 mm farther out stands 10 mm farther from the axis', () => {
    const spaced = { ...FACTORY, wheel: { ...FACTORY.wheel, spacer: 10 } };
    const scrub = [FACTORY, spaced].map((model) =>
      Number(comparedCell(measureDesign(sound(model)), 'ride', row('scrubRadius'))),
    );
    // Square to the axis that leans with the camber of 0.2°, and so within some hundredths.
    expect(scrub[1]! - scrub[0]!).toBeCloseTo(10, 1);
  });
});

describe('what a design lacks', () => {
  it('is named by its part, and by its key where the part is there', () => {
    const { coilover: _, ...without } = FULL_MODEL;
    const bare = measureDesign(sound(without));
    expect(comparedCell(bare, 'ride', row('motionRatio'))).toBe('no coilover');
    expect(comparedCell(bare, 'ride', row('wheelRate'))).toBe('no coilover');
    const planar = measureDesign(shipped('planar-equal-arms'));
    expect(comparedCell(planar, 'ride', row('wheelRate'))).toBe('no spring rate');
    expect(comparedCell(planar, 'ride', row('outerAngle'))).toBe('no half-shaft');
    expect(comparedCell(planar, 'ride', row('frontViewCentreY'))).toBe('at infinity');
    expect(comparedCell(planar, 'ride', row('innerSteer'))).toBe('none straight ahead');
  });

  it('out of reach: its place is still said, nothing else', () => {
    const far = measureDesign(sound({ ...FACTORY, travel: { bump: 400, droop: 105 } }));
    expect(unreachedWords(far, 'fullBump')).toMatch(
      /^out of reach: the (upper arm|lower arm|tie rod) cannot keep its length$/,
    );
    expect(comparedCell(far, 'fullBump', row('travel'))).toBe(400);
    expect(comparedCell(far, 'fullBump', row('camber'))).toBe('out of reach');
    expect(comparedCell(far, 'fullBump', row('strapLength'))).toBe('no strap');
    expect(unreachedWords(far, 'fullDroop')).toBe(null);
  });
});

describe('differences in words', () => {
  test.each<[ComparedKey, number, number, string, string]>([
    ['camber', -0.2, -0.6, '0.40°', 'leans in 0.40° more'],
    ['camber', -0.6, -0.2, '0.40°', 'leans in 0.40° less'],
    ['camber', 0.6, 0.2, '0.40°', 'leans out 0.40° less'],
    ['camber', 0.2, -0.2, '0.40°', 'leans in instead, 0.40° apart'],
    ['camber', -0.2, 0, '0.20°', 'leans in 0.20° less'],
    ['camber', 0, 0.2, '0.20°', 'leans out 0.20° more'],
    ['caster', 5, 4, '1.00°', 'leans back 1.00° less'],
    ['toe', 0.1, -0.1, '0.20°', 'front edge out instead, 0.20° apart'],
    ['scrubRadius', 10, 20, '10.0 mm', '10.0 mm more outboard'],
    ['scrubRadius', -3, 4, '7.0 mm', 'outboard instead, 7.0 mm apart'],
    ['bumpSteer', -0.02, -0.01, '0.01°/mm', 'goes out 0.01°/mm less as the wheel rises'],
    ['bumpSteer', -1, 1, '2°/mm', 'goes in as the wheel rises instead, 2°/mm apart'],
    ['halfTrack', 800, 810, '10.0 mm', '10.0 mm wider'],
    ['rollCentreHeight', 20, -20, '40.0 mm', '40.0 mm lower'],
    ['damperLength', 440, 430, '10.0 mm', '10.0 mm shorter'],
    ['wheelRate', 20, 30, '10.0 N/mm', '10.0 N/mm stiffer'],
    ['turningCircle', 12e3, 11e3, '1.00 m', '1.00 m tighter'],
    ['wheelGap', 12, 4, '8.0 mm', '8.0 mm closer'],
    ['ackermann', -96, -58, '38 %', 'outer wheel leads 38 % less'],
    ['ackermann', -5, 7, '12 %', 'inner wheel leads instead, 12 % apart'],
  ])('%s from %d to %d', (key, base, value, amount, words) => {
    expect(differenceWords(key, base, value, amount)).toBe(words);
  });

  it('say something for every row and either way, never the same both ways', () => {
    for (const { key } of COMPARED_ROWS) {
      for (const [one, other] of [
        [1, 2],
        [-1, -2],
        [-1, 2],
        [0, 2],
      ] as const) {
        const there = differenceWords(key, one, other, '3 units');
        const back = differenceWords(key, other, one, '3 units');
        expect(there).toContain('3 units');
        expect(there).not.toMatch(/[{}]| {2}/);
        expect(back).not.toBe(there);
      }
      expect(differenceWords(key, 1, 1, null)).toBe('the same');
    }
  });
});

describe('the CSV', () => {
  const designs = [
    { name: 'A "stock", with commas', measured: measureDesign(FACTORY) },
    { name: 'B', measured: measureDesign(LONG) },
    { name: 'C\nplanar', measured: measureDesign(shipped('planar-equal-arms')) },
  ];
  const [head = [], ...lines] = parseCsv(comparisonCsv(designs, 1));
  const count = COMPARED_ROWS.length;

  it('states unit and sign of every column', () => {
    expect(head).toHaveLength(2 + 2 * count + 1);
    expect(head).toContain('camber [deg; + top leans out, - top leans in]');
    expect(head).toContain('damper length, difference from B [mm]');
    expect(new Set(head).size).toBe(head.length);
    for (const name of head.slice(2, -1)) expect(name).toMatch(/ \[[^\]]+\]$/);
  });

  it('comes back to the very numbers, and their differences from the base', () => {
    expect(lines.map(([name, station]) => [name, station])).toEqual(
      STATIONS.flatMap((station) => designs.map(({ name }) => [name, STATION_LABELS[station]])),
    );
    lines.forEach((line, at) => {
      expect(line).toHaveLength(head.length);
      const station = STATIONS[Math.floor(at / designs.length)] as Station;
      const { measured } = designs[at % designs.length]!;
      COMPARED_ROWS.forEach((each, index) => {
        const value = comparedCell(measured, station, each);
        const base = comparedCell(designs[1]!.measured, station, each);
        expect(line[2 + index]).toBe(typeof value === 'number' ? String(value + 0) : '');
        const isFrom =
          typeof value === 'number' &&
          typeof base === 'number' &&
          measured !== designs[1]!.measured;
        const difference = line[2 + count + index]!;
        if (isFrom) expect(Math.abs(Number(difference) - (value - base))).toBeLessThan(1e-9);
        else expect(difference).toBe('');
      });
    });
  });

  it('says what is lacking, once each', () => {
    const planar = lines.find(([name]) => name === 'C\nplanar')!;
    expect(planar.at(-1)!.split('; ')).toEqual([
      'no spring rate',
      'no anti-roll bar',
      'no strap',
      'at infinity',
      'none straight ahead',
      'no half-shaft',
    ]);
  });
});
