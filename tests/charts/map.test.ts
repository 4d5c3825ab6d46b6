/** The map's paper: places, ticks, colours and the edge of reach. */

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createGapField } from '../../solver/clearance/gapField.ts';
import { assemble, createPose, solve } from '../../solver/index.ts';
import { createLockMap, mapInto } from '../../solver/map.ts';
import { bandOf, createGapScale, gapState } from '../../src/charts/gapColours.ts';
import { createMapFrame, rackAt, travelAt, xOfRack, yOfTravel } from '../../src/charts/mapFrame.ts';
import { paintGaps } from '../../src/charts/mapPixels.ts';
import { reachEdge } from '../../src/charts/reach.ts';
import { lengthTicks, roundStep, stepDigits, ticksOf } from '../../src/charts/ticks.ts';
import { shipped } from '../support/models.ts';

describe('createMapFrame', () => {
  const sense = fc.constantFrom(1 as const, -1 as const);
  const end = fc.double({ min: 1, max: 400, noNaN: true });

  test('a place goes to the paper and back', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(end, end, end, end, sense, share, share, (a, b, c, d, way, u, v) => {
        const frame = createMapFrame(344, 190, [-a, b], [-c, d], way);
        const travel = -a + u * (a + b);
        const rack = -c + v * (c + d);
        expect(travelAt(frame, yOfTravel(frame, travel))).toBeCloseTo(travel, 9);
        expect(rackAt(frame, xOfRack(frame, rack))).toBeCloseTo(rack, 9);
      }),
    );
  });

  test('bump is up, and left lock on the left whichever way the rack goes for it', () => {
    const ahead = createMapFrame(344, 190, [-100, 100], [-70, 70], -1);
    expect(yOfTravel(ahead, 100)).toBe(ahead.top);
    expect(xOfRack(ahead, 70)).toBe(ahead.left);
    const behind = createMapFrame(344, 190, [-100, 100], [-70, 70], 1);
    expect(xOfRack(behind, -70)).toBe(behind.left);
  });

  test('one column has the rack of the model wherever it is touched', () => {
    const frame = createMapFrame(344, 190, [-100, 100], [0, 0], -1);
    expect(frame.isLine).toBe(true);
    expect([rackAt(frame, 0), rackAt(frame, 300)]).toEqual([0, 0]);
  });
});

describe('ticks', () => {
  test('are multiples of a round step inside the range, at most as many as asked and two more ends', () => {
    const value = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(value, value, fc.integer({ min: 1, max: 12 }), (a, b, most) => {
        const [least, greatest] = a < b ? [a, b] : [b, a];
        fc.pre(greatest - least > 1e-3);
        const step = roundStep(greatest - least, most);
        const ticks = ticksOf(least, greatest, most);
        expect(ticks.length).toBeLessThanOrEqual(most + 1);
        for (const { at, text } of ticks) {
          expect(at).toBeGreaterThanOrEqual(least - step * 1e-6);
          expect(at).toBeLessThanOrEqual(greatest + step * 1e-6);
          expect(Math.abs(at / step - Math.round(at / step))).toBeLessThan(1e-6);
          expect(Number(text.replace('−', '-'))).toBeCloseTo(at, 9);
        }
      }),
    );
  });

  test('of lengths are round in the unit shown', () => {
    expect(lengthTicks(-105, 105, 5, 'mm').map(({ text }) => text)).toEqual([
      '−100',
      '−50',
      '0',
      '50',
      '100',
    ]);
    const inches = lengthTicks(-105, 105, 5, 'inch');
    expect(inches.map(({ text }) => text)).toEqual(['−4', '−2', '0', '2', '4']);
    expect(inches[4]!.at).toBeCloseTo(101.6, 10);
  });

  test('digits are what the step needs', () => {
    expect([500, 10, 1, 0.5, 0.2, 0.01].map(stepDigits)).toEqual([0, 0, 0, 1, 1, 2]);
  });
});

describe('createGapScale', () => {
  const scale = createGapScale(8, 41, 'light', 'mm');

  test('has edges at 0 and at the wanted gap, ascending, over the whole map', () => {
    expect(scale.edges).toContain(0);
    expect(scale.edges).toContain(8);
    expect([...scale.edges].sort((a, b) => a - b)).toEqual(scale.edges);
    expect(scale.edges.at(-1)).toBeGreaterThanOrEqual(41);
    expect(scale.colours).toHaveLength(scale.edges.length - 1);
  });

  test('a band holds its gaps, the outer ones all beyond', () => {
    expect(bandOf(scale, -500)).toBe(0);
    expect(bandOf(scale, 500)).toBe(scale.colours.length - 1);
    for (const gap of [-9, -1, 0, 3, 7.99, 8, 12, 39]) {
      const band = bandOf(scale, gap);
      expect(scale.edges[band]!).toBeLessThanOrEqual(gap);
      expect(scale.edges[band + 1]!).toBeGreaterThan(gap);
    }
  });

  test('neighbouring bands across 0 and across the wanted gap differ in hue, in both themes', () => {
    for (const theme of ['light', 'dark'] as const) {
      const { colours, edges } = createGapScale(8, 41, theme, 'mm');
      const isWarm = (gap: number): boolean => {
        const [red, , blue] = colours[bandOf({ ...scale, edges }, gap)]!;
        return red > blue;
      };
      expect([-1, 1, 7].map(isWarm)).toEqual([true, true, true]);
      expect([9, 40].map(isWarm)).toEqual([false, false]);
    }
  });

  test('a gap touches at 0 and is clear from the wanted gap on', () => {
    expect([-1, 0, 0.01, 7.99, 8].map((gap) => gapState(gap, 8))).toEqual([
      'touch',
      'touch',
      'near',
      'near',
      'clear',
    ]);
  });
});

describe('paintGaps', () => {
  test('each plain pixel has the colour of the gap there, left lock on the left', () => {
    const map = createLockMap(3, 3);
    map.travels.set([-10, 0, 10]);
    map.racks.set([-6, 0, 6]);
    // gap = 20 + rack + 2·travel, which bilinear interpolation keeps exactly.
    for (let node = 0; node < 9; node += 1) {
      map.gap[node] = 20 + map.racks[node % 3]! + 2 * map.travels[Math.floor(node / 3)]!;
    }
    map.reached.fill(1);
    const scale = createGapScale(8, 46, 'light', 'mm');
    const picture = { width: 60, height: 40, data: new Uint8ClampedArray(60 * 40 * 4) };
    paintGaps(map, scale, -1, picture, 1);
    let plain = 0;
    for (let y = 0; y < 40; y += 1) {
      for (let x = 0; x < 60; x += 1) {
        const rack = 6 - ((x + 0.5) / 60) * 12;
        const travel = 10 - ((y + 0.5) / 40) * 20;
        const gap = 20 + rack + 2 * travel;
        if (gap < 8 || scale.edges.some((edge) => Math.abs(edge - gap) < 0.1)) continue;
        const at = 4 * (y * 60 + x);
        expect([...picture.data.slice(at, at + 3)]).toEqual(scale.colours[bandOf(scale, gap)]);
        plain += 1;
      }
    }
    expect(plain).toBeGreaterThan(1000);
  });
});

describe('reachEdge', () => {
  test('is null where all is in reach', () => {
    const corner = assemble(shipped('half-ton-factory'));
    const map = createLockMap(9, 7);
    mapInto(corner, createGapField(corner, 'tieRod/wheel')!, map, [-105, 105], [-72, 72]);
    expect(reachEdge(map)).toBeNull();
  });

  test('goes round what the solver reaches: just inside it is reached, just outside it is not', () => {
    const corner = assemble(shipped('half-ton-factory'));
    const map = createLockMap(21, 17);
    mapInto(corner, createGapField(corner, 'tieRod/wheel')!, map, [-260, 220], [-130, 170]);
    const edge = reachEdge(map)!;
    const pose = createPose();
    let crossed = 0;
    for (let i = 0; i < edge.length; i += 2) {
      const [rack, travel] = [edge[i]!, edge[i + 1]!];
      const isInside = solve(corner, pose, travel * 0.995, rack * 0.995);
      expect(isInside).toBe('reached');
      const isBorder = [-260, 220].includes(travel) || [-130, 170].includes(rack);
      if (isBorder) continue;
      expect(solve(corner, pose, travel * 1.005, rack * 1.005)).not.toBe('reached');
      crossed += 1;
    }
    expect(crossed).toBeGreaterThan(20);
  });
});
