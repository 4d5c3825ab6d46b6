import { describe, expect, it } from 'vitest';
import {
  assemble,
  type Corner,
  createMeasures,
  createPose,
  limitedValue,
  limitsOf,
  type Model,
  measureInto,
  outsideLimits,
  solve,
} from '../../solver/index.ts';
import { stopCurve } from '../../solver/stops/curve.ts';
import { cycleGrid } from '../../solver/stops/cycle.ts';
import { extremesOf } from '../../solver/stops/extremes.ts';
import { firstStops } from '../../solver/stops/firstStops.ts';
import { createMargins, marginsInto } from '../../solver/stops/margins.ts';
import { usableRegion } from '../../solver/stops/region.ts';
import { wantedTravel, withWanted } from '../../solver/stops/wanted.ts';
import { shipped, sound } from '../support/models.ts';

const factory = shipped('half-ton-factory');
const longTravel = shipped('half-ton-long-travel');

/** The value of one of the model's own limits, by the measures that readings show. */
function limited(corner: Corner, name: string, travel: number, rack: number): number {
  const limit = limitsOf(corner.model).find((each) => each.name === name)!;
  const pose = createPose();
  const measures = createMeasures();
  expect(solve(corner, pose, travel, rack)).toBe('reached');
  measureInto(corner, pose, measures);
  return limitedValue(limit, pose, measures);
}

function without(model: Model, ...keys: (keyof Model)[]): Model {
  return sound(
    Object.fromEntries(Object.entries(model).filter(([key]) => !keys.some((k) => k === key))),
  );
}

/** The factory corner with a plunge out that is passed, by some hundredths, only about 16 mm of droop. */
function shallow(depth: number): { corner: Corner; worst: number } {
  const corner = assemble(factory);
  let least = 0;
  let worst = 0;
  for (let travel = -40; travel <= 0; travel += 0.01) {
    const plunge = limited(corner, 'halfShaft.plungeOut', travel, 0);
    if (plunge < least) [least, worst] = [plunge, travel];
  }
  const plungeOut = -least - depth;
  return {
    corner: assemble({ ...factory, halfShaft: { ...factory.halfShaft!, plungeOut } }),
    worst,
  };
}

describe('first stops', () => {
  it('stand where the limits are met, in order, beyond the range too', () => {
    const corner = assemble(longTravel);
    const margins = createMargins(corner, { withPairs: false });
    const { stops, first, rangeEnd, provenTo, lookedTo } = firstStops(margins, {
      way: 'droop',
      held: 0,
    });
    expect(first?.margin.key).toBe('stops.droop');
    expect(first?.at).toBeCloseTo(-172, 9);
    expect(rangeEnd).toBe(-175);
    expect(provenTo).toBe(lookedTo);
    const own = stops.filter(({ margin }) => margin.kind !== 'dropLink');
    expect(own.length).toBeGreaterThan(5);
    for (const { margin, at, isBeyondRange } of own) {
      const limit = limitsOf(longTravel).find(({ name }) => name === margin.key)!;
      const value = limited(corner, margin.key, at, 0);
      expect(value, margin.key).toBeCloseTo((limit.most ?? limit.least)!, 6);
      expect(isBeyondRange).toBe(at < -175);
    }
    const places = stops.map(({ at }) => at);
    expect(places).toEqual([...places].sort((a, b) => b - a));
  });

  it('find a dip of a hundredth that no sample need see, and where it ends', () => {
    const { corner, worst } = shallow(0.01);
    const margins = createMargins(corner, { withPairs: false });
    const { stops } = firstStops(margins, { way: 'droop', held: 0 });
    const dip = stops.find(({ margin }) => margin.key === 'halfShaft.plungeOut')!;
    expect(dip.at).toBeGreaterThan(worst);
    expect(dip.until).toBeLessThan(worst);
    expect(dip.at - dip.until!).toBeLessThan(15);
    const limit = -corner.model.halfShaft!.plungeOut!;
    for (const place of [dip.at, dip.until!]) {
      expect(limited(corner, 'halfShaft.plungeOut', place, 0)).toBeCloseTo(limit, 6);
    }
  });

  it('leave alone what stays inside by as little', () => {
    const margins = createMargins(shallow(-0.0005).corner, { withPairs: false });
    const { stops } = firstStops(margins, { way: 'droop', held: 0 });
    expect(stops.map(({ margin }) => margin.key)).not.toContain('halfShaft.plungeOut');
  });

  it('say what is outside at the start', () => {
    const strapped = { ...longTravel, strap: { ...longTravel.strap!, length: 200 } };
    const margins = createMargins(assemble(strapped), { withPairs: false });
    const { stops, first } = firstStops(margins, { way: 'bump', held: 10 });
    const strap = stops[0]!;
    expect([strap.margin.key, strap.at, strap.isOutsideAtStart]).toEqual(['strap.length', 0, true]);
    expect(limited(assemble(strapped), 'strap.length', strap.until!, 10)).toBeCloseTo(200, 6);
    expect(first?.margin.key).toBe('stops.bump');
  });

  it('end with the linkage’s own reach', () => {
    const corner = assemble(factory);
    const margins = createMargins(corner, { withPairs: false });
    const { stops, lookedTo, provenTo } = firstStops(margins, { way: 'right', held: 0 });
    const last = stops.at(-1)!;
    expect([last.margin.key, last.fails]).toEqual(['linkage', 'tieRod']);
    const pose = createPose();
    expect(solve(corner, pose, 0, last.at + 1e-4)).toBe('reached');
    expect(solve(corner, pose, 0, last.at - 1e-2)).not.toBe('reached');
    expect(lookedTo).toBe(last.at);
    expect(provenTo - last.at).toBeLessThan(0.5);
  });

  it('say so when nothing stops the wheel', () => {
    const margins = createMargins(assemble(shipped('planar-equal-arms')), { withPairs: false });
    const { stops, first, lookedTo } = firstStops(margins, { way: 'bump', held: 0 });
    expect([stops, first, lookedTo]).toEqual([[], null, 150]);
  });

  it('steer to the left whichever way the rack goes', () => {
    for (const name of ['half-ton-factory', 'rear-steer-saloon'] as const) {
      const corner = assemble(shipped(name));
      const { first } = firstStops(createMargins(corner, { withPairs: false }), {
        way: 'left',
        held: 0,
      });
      expect(first?.margin.label).toBe('rack, left lock');
      const pose = createPose();
      const measures = createMeasures();
      solve(corner, pose, 0, first!.at);
      measureInto(corner, pose, measures);
      expect(limited(corner, 'steering.limit', 0, first!.at)).toBeCloseTo(first!.at, 9);
      expect(measures[9], name).not.toBeNaN();
    }
  });
});

describe('the cycle grid', () => {
  const corner = assemble(longTravel);
  const margins = createMargins(corner);
  const grid = cycleGrid(margins);

  it('has every margin of a pose solved on its own', () => {
    expect(grid.cells).toHaveLength(15);
    const pose = createPose();
    const measures = createMeasures();
    for (const { travel, rack, margins: told, isReached } of grid.cells) {
      expect(isReached).toBe(true);
      solve(corner, pose, travel, rack);
      measureInto(corner, pose, measures);
      const outside = outsideLimits(corner, pose, measures);
      for (const limit of limitsOf(longTravel).filter(({ of }) => of !== 'rack')) {
        const value = limitedValue(limit, pose, measures);
        const left = limit.most === undefined ? value - limit.least! : limit.most - value;
        const { value: margin } = told.find((each) => each.margin.key === limit.name)!;
        expect(margin, limit.name).toBeCloseTo(left, 9);
        expect(margin < 0, limit.name).toBe(outside.includes(limit.name));
      }
    }
  });

  it('takes its heights from the model', () => {
    expect(grid.heights.map(({ travel }) => travel)).toEqual([165, 158, 0, -86, -172]);
    expect(grid.heights.map(({ because }) => because)).toEqual([
      'travel.bump',
      'stops.bump',
      'travel.ride',
      'half-way from ride height to full droop',
      'droop stop met',
    ]);
    const bare = cycleGrid(createMargins(assemble(without(longTravel, 'stops', 'strap'))));
    expect(bare.heights[1]!.travel).toBeCloseTo(165 - 0.2 * (165 + 175), 9);
    expect(bare.heights[1]!.because).toContain('no source');
    expect(bare.heights[4]!.travel).toBe(-175);
  });

  it('marks the worst, but not what a height or a lock is by what it is', () => {
    const full = grid.cells.find(({ height, lock }) => height === 'fullDroop' && lock === 'left')!;
    const of = (key: string) => full.margins.find(({ margin }) => margin.key === key)!;
    expect(of('stops.droop').standing).toBe('meant');
    expect(of('steering.most').standing).toBe('meant');
    expect(of('steering.least').standing).toBe('pass');
    for (const cell of grid.cells) {
      const share = ({ value, margin }: (typeof cell.margins)[number]) =>
        value / Math.max(1, margin.near);
      const judged = cell.margins.filter(({ standing }) => standing !== 'meant');
      const least = Math.min(...judged.map(share));
      expect(share(cell.worst!)).toBe(least);
      expect(cell.standing).toBe(cell.worst!.standing);
      for (const { value, margin, standing } of judged) {
        expect(standing).toBe(value <= 0 ? 'contact' : value < margin.near ? 'near' : 'pass');
      }
    }
  });

  it('has no locks without a steering limit, and says where it cannot reach', () => {
    const straight = cycleGrid(createMargins(assemble(without(factory, 'steering'))));
    expect(straight.racks.map(({ rack }) => rack)).toEqual([null, 0, null]);
    expect(straight.cells).toHaveLength(5);
    const far = { ...factory, steering: { limit: [-110, 72] as const } };
    const beyond = cycleGrid(createMargins(assemble(far), { withPairs: false }));
    const cell = beyond.cells.find(({ height, lock }) => height === 'ride' && lock === 'right')!;
    expect([cell.isReached, cell.fails, cell.standing]).toEqual([false, 'tieRod', 'contact']);
    expect(cell.lastRack).toBeLessThan(-90);
  });
});

describe('worst places', () => {
  const corner = assemble(longTravel);
  const extremes = extremesOf(corner);

  it('are never passed anywhere on a grid, and are really there', () => {
    const pose = createPose();
    const measures = createMeasures();
    const names: Readonly<Record<string, string>> = {
      outerAngle: 'halfShaft.outerLimit',
      plunge: 'halfShaft.plungeIn',
      damperLength: 'coilover.minLength',
      lowerBallJoint: 'lowerArm.ballJointLimit',
      tieRodOuter: 'tieRod.endLimit',
    };
    for (const [key, name] of Object.entries(names)) {
      const { least, greatest } = extremes.find((each) => each.key === key)!;
      expect([least.isProven, greatest.isProven], key).toEqual([true, true]);
      for (const { value, travel, rack } of [least, greatest]) {
        expect(limited(corner, name, travel, rack), key).toBeCloseTo(value, 9);
      }
      const limit = limitsOf(longTravel).find((each) => each.name === name)!;
      for (let travel = -175; travel <= 165; travel += 8.5) {
        for (let rack = -92; rack <= 92; rack += 8) {
          solve(corner, pose, travel, rack);
          measureInto(corner, pose, measures);
          const value = limitedValue(limit, pose, measures);
          expect(value).toBeGreaterThanOrEqual(least.bound);
          expect(value).toBeLessThanOrEqual(greatest.bound);
        }
      }
    }
  });

  it('need not be at the corners', () => {
    const { greatest } = extremes.find(({ key }) => key === 'innerAngle')!;
    expect(Math.abs(greatest.rack)).toBeLessThan(60);
    for (const rack of [-92, 92]) {
      for (const travel of [-175, 165]) {
        const atCorner = limited(corner, 'halfShaft.innerLimit', travel, rack);
        expect(atCorner).toBeLessThan(greatest.value - 0.1);
      }
    }
  });
});

describe('the usable region', () => {
  const corner = assemble(longTravel);
  const margins = createMargins(corner);
  const region = usableRegion(margins, { rows: 25, columns: 19 });
  const columns = region.racks.length;
  const kept = region.margins.filter((margin) => !region.outsideAtSet.includes(margin));

  it('holds the nodes at which every limit is kept', () => {
    const pose = createPose();
    let inside = 0;
    region.usable.forEach((usable, node) => {
      if (usable === 0) return;
      inside += 1;
      const travel = region.travels[Math.floor(node / columns)]!;
      const rack = region.racks[node % columns]!;
      expect(solve(corner, pose, travel, rack)).toBe('reached');
      measureInto(corner, pose, createMeasures());
      marginsInto(margins, pose, travel, rack);
      for (const margin of kept) {
        expect(margins.values[margins.list.indexOf(margin)]).toBeGreaterThan(-1e-6);
      }
    });
    expect(inside).toBeGreaterThan(100);
    expect(inside).toBeLessThan(region.usable.length);
  });

  it('is bounded by the limits it names', () => {
    const pose = createPose();
    const keys = region.edge.map(({ key }) => key);
    expect(keys).toContain('stops.droop');
    for (const { margin, points } of region.edge) {
      if (margin === null) continue;
      for (let i = 2; i + 3 < points.length; i += 2) {
        solve(corner, pose, points[i + 1]!, points[i]!);
        measureInto(corner, pose, createMeasures());
        marginsInto(margins, pose, points[i + 1]!, points[i]!);
        expect(Math.abs(margins.values[margins.list.indexOf(margin)]!)).toBeLessThan(1e-3);
      }
    }
    region.edge.forEach(({ points }, i) => {
      const next = region.edge[(i + 1) % region.edge.length]!.points;
      expect([points.at(-2), points.at(-1)]).toEqual([next[0], next[1]]);
    });
  });

  it('agrees with the first stops over lock', () => {
    const racks = Float64Array.of(-60, 60);
    for (const { rack, bump, droop } of stopCurve(margins, racks)) {
      for (const [stop, way] of [
        [bump, 'bump'],
        [droop, 'droop'],
      ] as const) {
        const { stops } = firstStops(margins, { way, held: rack }, (m) => kept.includes(m));
        const first = stops[0]!;
        expect(stop?.margin.key).toBe(first.margin.key);
        expect(stop?.at).toBeCloseTo(first.at, 5);
      }
    }
  });
});

describe('a wanted travel', () => {
  const wish = { bump: 120, droop: 130 };
  const table = wantedTravel(assemble(longTravel), wish);

  it('is had by what its table asks for', () => {
    expect(table.fails).toBeNull();
    const corner = assemble(withWanted(longTravel, table));
    const margins = createMargins(corner, { withPairs: false });
    const bump = firstStops(margins, { way: 'bump', held: 0 });
    expect(bump.first?.margin.key).toBe('stops.bump');
    expect(bump.first?.at).toBeCloseTo(120 - 0.2 * 250, 6);
    for (const rack of [-92, -40, 0, 60, 92]) {
      const up = firstStops(margins, { way: 'bump', held: rack });
      expect(up.stops.filter(({ margin, at }) => margin.kind !== 'stop' && at < 120)).toEqual([]);
      const down = firstStops(margins, { way: 'droop', held: rack });
      const early = down.stops.filter(({ margin, at }) => margin.kind !== 'stop' && at > -128);
      expect(early).toEqual([]);
    }
    const droop = firstStops(margins, { way: 'droop', held: 0 });
    expect(
      droop.stops
        .slice(0, 2)
        .map(({ margin }) => margin.key)
        .sort(),
    ).toEqual(['stops.droop', 'strap.length']);
    for (const { at } of droop.stops.slice(0, 2)) expect(at).toBeCloseTo(-130, 5);
  });

  it('leaves just what was to be left unused', () => {
    for (const { key, demand, reserve, travel, rack, wanted, sense } of table.rows) {
      if (key.startsWith('stops') || key === 'halfShaft.plungeOut') continue;
      expect(limited(assemble(longTravel), key, travel, rack), key).toBeCloseTo(demand, 6);
      expect(wanted).toBeCloseTo(sense === 'at most' ? demand - reserve : demand + reserve, 9);
    }
    const reserves = Object.fromEntries(table.rows.map(({ key, reserve }) => [key, reserve]));
    expect(reserves['coilover.minLength']).toBe(10);
    expect(reserves['coilover.maxLength']).toBe(15);
  });

  it('names the parts whose points it would need, and the linkage when it cannot', () => {
    expect(wantedTravel(assemble(factory), wish).missing).toEqual(['strap']);
    const far = wantedTravel(assemble(factory), { bump: 600, droop: 100 });
    expect(far.fails).not.toBeNull();
    expect(far.rows).toEqual([]);
  });
});
