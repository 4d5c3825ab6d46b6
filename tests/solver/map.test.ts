/** The travel–lock map and its worst place against the solver asked directly. */

import { describe, expect, test } from 'vitest';
import factory from '../../models/half-ton-factory.json';
import longTravel from '../../models/half-ton-long-travel.json';
import { createGapField, type GapField } from '../../solver/clearance/gapField.ts';
import {
  assemble,
  type Corner,
  createPose,
  createRodGap,
  placeParts,
  readModel,
  rodGapInto,
  solve,
} from '../../solver/index.ts';
import {
  beginMap,
  createLockMap,
  fillAxis,
  type LockMap,
  mapInto,
  mapRow,
} from '../../solver/map.ts';
import { withinStops, worstPlace } from '../../solver/worst.ts';

function cornerOf(json: object): Corner {
  const read = readModel(json, 'model.json');
  if (!read.ok) throw new Error(read.error.path);
  return assemble(read.model);
}

const corner = cornerOf(factory);

function fieldOf(on: Corner, against: 'wheel' | 'tyre'): GapField {
  return createGapField(on, `tieRod/${against}`)!;
}

/** The gap straight from the solver, and whether the pose is reached. */
function direct(on: Corner, pair: 'wheel' | 'tyre', travel: number, rack: number) {
  const pose = createPose();
  const rod = createRodGap(on, pair);
  const outcome = solve(on, pose, travel, rack);
  placeParts(on, pose.data);
  rodGapInto(rod, pose);
  return { reached: outcome === 'reached', gap: rod.gap, pose };
}

function eachNode(map: LockMap, see: (node: number, travel: number, rack: number) => void): void {
  map.travels.forEach((travel, row) => {
    map.racks.forEach((rack, column) => {
      see(row * map.racks.length + column, travel, rack);
    });
  });
}

describe('fillAxis(axis, [least, most])', () => {
  test.each([
    [-105, 105, 81],
    [-72, 70, 61],
    [-1, 300, 21],
    [0, 40, 16],
    [-40, 0, 16],
    [-3, 5, 3],
  ])('%d to %d over %d nodes: ends exact, ascending, 0 a node', (least, most, count) => {
    const axis = new Float64Array(count);
    fillAxis(axis, [least, most]);
    expect(axis[0]).toBe(least);
    expect(axis.at(-1)).toBe(most);
    expect(axis).toContain(0);
    for (let i = 1; i < count; i += 1) expect(axis[i]!).toBeGreaterThan(axis[i - 1]!);
  });

  test('a single node stands at the least', () => {
    const axis = new Float64Array(1);
    fillAxis(axis, [0, 0]);
    expect(axis[0]).toBe(0);
  });
});

describe('mapInto(corner, fieldOf(corner, pair), map, travel, rack)', () => {
  test.each(['wheel', 'tyre'] as const)(
    'every node’s gap to the %s is the solver’s own',
    (pair) => {
      const map = createLockMap(13, 9);
      mapInto(corner, fieldOf(corner, pair), map, [-105, 105], [-72, 72]);
      eachNode(map, (node, travel, rack) => {
        const wanted = direct(corner, pair, travel, rack);
        expect(map.reached[node]).toBe(1);
        expect(map.gap[node]).toBeCloseTo(wanted.gap, 9);
        expect([map.lastTravel[node], map.lastRack[node]]).toEqual([travel, rack]);
      });
    },
  );

  test('what is out of reach, found along the rays, is what the solver says node by node', () => {
    const map = createLockMap(31, 23);
    mapInto(corner, fieldOf(corner, 'wheel'), map, [-260, 220], [-130, 170]);
    let out = 0;
    eachNode(map, (node, travel, rack) => {
      const wanted = direct(corner, 'wheel', travel, rack);
      expect(map.reached[node] === 1, `${travel}, ${rack}`).toBe(wanted.reached);
      expect(Math.abs(map.lastTravel[node]! - wanted.pose.lastTravel)).toBeLessThan(0.01);
      expect(Math.abs(map.lastRack[node]! - wanted.pose.lastRack)).toBeLessThan(0.01);
      if (wanted.reached) expect(map.gap[node]).toBeCloseTo(wanted.gap, 9);
      else out += 1;
    });
    expect(out).toBeGreaterThan(50);
    expect(out).toBeLessThan(31 * 23 - 50);
  });

  test('rows come one at a time, each node once, and then no more', () => {
    const map = createLockMap(7, 5);
    const work = beginMap(corner, fieldOf(corner, 'wheel'), map, [-100, 60], [-30, 70]);
    map.gap.fill(Number.POSITIVE_INFINITY);
    for (let row = 1; row <= 7; row += 1) {
      expect(mapRow(work)).toBe(true);
      expect(map.gap.filter(Number.isFinite)).toHaveLength(5 * row);
    }
    expect(mapRow(work)).toBe(false);
  });

  test('a corner without a steering limit has one column, straight ahead', () => {
    const map = createLockMap(21, 1);
    mapInto(corner, fieldOf(corner, 'wheel'), map, [-105, 105], [0, 0]);
    expect([...map.racks]).toEqual([0]);
    eachNode(map, (node, travel) => {
      expect(map.gap[node]).toBeCloseTo(direct(corner, 'wheel', travel, 0).gap, 9);
    });
  });

  test('a corner that cannot be put together has no gap and no reach', () => {
    const broken = cornerOf({
      ...factory,
      tieRod: { ...factory.tieRod, turns: 220 },
    });
    expect(broken.linkage.broken).not.toBeNull();
    const map = createLockMap(5, 5);
    mapInto(broken, fieldOf(broken, 'wheel'), map, [-105, 105], [-72, 72]);
    expect([...map.reached]).toEqual(Array(25).fill(0));
    expect([...map.gap]).toEqual(Array(25).fill(Number.NaN));
    expect(worstPlace(broken, map, fieldOf(broken, 'wheel'))).toBeNull();
  });
});

describe('worstPlace(corner, map, fieldOf(corner, pair))', () => {
  test.each([
    ['factory, wheel', factory, 'wheel', [-105, 105], [-72, 72]],
    ['factory, tyre', factory, 'tyre', [-105, 105], [-72, 72]],
    ['long travel, wheel', longTravel, 'wheel', [-175, 200], [-92, 92]],
    ['long travel, tyre', longTravel, 'tyre', [-175, 200], [-60, 92]],
    ['out of reach at the corners', factory, 'tyre', [-180, 200], [-95, 100]],
  ] as const)('%s: no denser sample lies lower by 0.01 mm', (_, json, pair, travel, rack) => {
    const on = cornerOf(json);
    const map = createLockMap(21, 16);
    mapInto(on, fieldOf(on, pair), map, travel, rack);
    const worst = worstPlace(on, map, fieldOf(on, pair))!;
    const there = direct(on, pair, worst.travel, worst.rack);
    expect(there.gap).toBeCloseTo(worst.gap, 6);
    const dense = createLockMap(161, 121);
    mapInto(on, fieldOf(on, pair), dense, travel, rack);
    expect(worst.gap).toBeLessThan(Math.min(...dense.gap) + 0.01);
    expect(worst.travel).toBeGreaterThanOrEqual(travel[0]);
    expect(worst.travel).toBeLessThanOrEqual(travel[1]);
    expect(worst.rack).toBeGreaterThanOrEqual(rack[0]);
    expect(worst.rack).toBeLessThanOrEqual(rack[1]);
  });

  test.each([
    ['factory, wheel', factory, 'wheel', [-105, 105], [-72, 72]],
    ['long travel, tyre', longTravel, 'tyre', [-175, 200], [-92, 92]],
  ] as const)(
    '%s: within a part of the travel no denser sample of it lies lower',
    (_, json, pair, travel, rack) => {
      const on = cornerOf(json);
      const map = createLockMap(21, 16);
      mapInto(on, fieldOf(on, pair), map, travel, rack);
      const within = [0.31 * travel[0], 0.62 * travel[1]] as const;
      const worst = worstPlace(on, map, fieldOf(on, pair), undefined, within)!;
      expect(worst.travel).toBeGreaterThanOrEqual(within[0]);
      expect(worst.travel).toBeLessThanOrEqual(within[1]);
      const dense = createLockMap(161, 121);
      mapInto(on, fieldOf(on, pair), dense, within, rack);
      expect(worst.gap).toBeLessThan(Math.min(...dense.gap) + 0.01);
    },
  );
});

test('withinStops(model, travel) leaves what no stop stands before', () => {
  const { model } = cornerOf(factory);
  const { stops: _, ...bare } = model;
  expect(withinStops(bare, [-105, 105])).toEqual([-105, 105]);
  expect(withinStops({ ...bare, stops: { bump: 90 } }, [-105, 105])).toEqual([-105, 90]);
  expect(withinStops({ ...bare, stops: { bump: 90, droop: 80 } }, [-105, 60])).toEqual([-80, 60]);
});
