/** Smallest cures, verified by applying them: the changed model is proven, and a little less of the change is not enough. */
import { describe, expect, it } from 'vitest';
import {
  allSteps,
  assemble,
  type Cure,
  type CureKind,
  type Cures,
  certify,
  curesInSteps,
  cureWords,
  extremesOf,
  type Model,
  watchedPairs,
} from '../../solver/index.ts';
import { shipped, sound } from '../support/models.ts';

const longTravel = shipped('half-ton-long-travel');

function curesOf(model: Model, key: string, kinds: readonly CureKind[]): Cures {
  const found = allSteps(curesInSteps(model, key, undefined, kinds));
  if (found === null) throw new Error(`Nothing to cure: ${key}`);
  return found;
}

function cureOf(found: Cures, kind: CureKind): Cure {
  const cure = found.cures.find((each) => each.kind === kind);
  if (cure === undefined) throw new Error(`No cure by ${kind}`);
  return cure;
}

/** The proof of one pair of a model. */
function proofOf(model: Model, key: string) {
  const corner = assemble(sound(model));
  return certify(
    corner,
    watchedPairs(corner).filter(({ names }) => names.join('/') === key),
  )[0]!;
}

/** The model with only a share of what a cure moves: each number that it sets, and only those. */
function withShare(before: Model, after: Model, share: number): Model {
  const mix = (a: unknown, b: unknown): unknown => {
    if (typeof a === 'number' && typeof b === 'number') return a + (b - a) * share;
    if (Array.isArray(a) && Array.isArray(b)) return b.map((item, i) => mix(a[i], item));
    if (typeof a === 'object' && typeof b === 'object' && a !== null && b !== null) {
      return Object.fromEntries(
        Object.entries(b).map(([key, item]) => [key, mix(Reflect.get(a, key), item)]),
      );
    }
    return b;
  };
  return mix(before, after) as Model;
}

describe('cures of a tie rod that meets the wheel', () => {
  const key = 'tieRod/wheel';
  const kinds = ['rackLimit', 'spacer', 'outerEnd', 'droopStop', 'coiloverTop'] as const;
  const found = curesOf(longTravel, key, kinds);
  const spaced: Model = { ...longTravel, wheel: { ...longTravel.wheel, spacer: 0 } };

  it.each(['rackLimit', 'spacer', 'outerEnd'] as const)(
    'by %s bring the proven gap, and a twentieth less does not',
    (kind) => {
      const cure = cureOf(found, kind);
      expect(cure.reaches).toBe(true);
      expect(cure.isProven).toBe(true);
      const { least, provenAtLeast, verdict } = proofOf(cure.model, key);
      expect(verdict).toBe('clear');
      expect(provenAtLeast).toBeGreaterThanOrEqual(found.wanted - 0.05);
      expect(least).toBeLessThan(found.wanted + 0.1);
      expect(proofOf(withShare(spaced, cure.model, 0.95), key).least).toBeLessThan(found.wanted);
    },
  );

  it('say what they set, in words and numbers', () => {
    const spacer = cureOf(found, 'spacer');
    expect(cureWords(spacer, (mm) => `${mm.toFixed(1)} mm`)).toBe(
      `spacer ${spacer.amount.toFixed(1)} mm thicker`,
    );
    expect(spacer.model.wheel.spacer).toBe(spacer.amount);
    expect(spacer.settings).toEqual([
      { label: 'spacer', before: 0, after: spacer.amount, unit: 'mm' },
    ]);
  });

  it('stop the rack at the lock that meets the wheel, and leave the other', () => {
    const rack = cureOf(found, 'rackLimit');
    expect(rack.says).toEqual(['rack stopped', 'earlier at right lock']);
    expect(rack.model.steering!.limit![1]).toBe(longTravel.steering!.limit![1]);
    expect(rack.model.steering!.limit![0]).toBeCloseTo(-92 + rack.amount, 6);
  });

  it('tell what else they move: a spacer scrub and track as far as itself, an end the toe', () => {
    const spacer = cureOf(found, 'spacer');
    const moved = (label: string): number => {
      const { before, after } = spacer.moves.find((each) => each.label === label)!;
      return after - before!;
    };
    expect(moved('half track')).toBeCloseTo(spacer.amount, 1);
    expect(moved('scrub radius')).toBeCloseTo(spacer.amount, 0);
    expect(spacer.moves.map(({ label }) => label)).not.toContain('caster');
    const end = cureOf(found, 'outerEnd');
    expect(end.moves.map(({ label }) => label)).toContain('toe change over travel');
    const worse = end.worsened.find(({ label }) => label === 'tie rod to lower arm')!;
    expect(worse.after).toBeCloseTo(proofOf(end.model, 'tieRod/lowerArm').least, 2);
  });

  it('that cannot reach say so, and those that do nothing are left out', () => {
    const stop = cureOf(found, 'droopStop');
    expect(stop.reaches).toBe(false);
    expect(stop.least).toBeGreaterThan(found.least);
    expect(stop.least).toBeLessThan(found.wanted);
    expect(found.cures.some(({ kind }) => kind === 'coiloverTop')).toBe(false);
    expect(found.cures.map(({ reaches }) => reaches)).toEqual([true, true, true, false]);
  });
});

describe('cures of a coilover that tops out', () => {
  const factory = shipped('half-ton-factory');
  const key = 'coilover.maxLength';
  const kinds = ['droopStop', 'coiloverTop', 'coiloverBottom', 'spacer', 'rodBend'] as const;
  const found = curesOf(factory, key, kinds);
  const most = factory.coilover!.maxLength!;
  const longest = (model: Model): number =>
    extremesOf(assemble(sound(model)), undefined, ['damperLength'])[0]!.greatest.value;

  it.each(['droopStop', 'coiloverTop', 'coiloverBottom'] as const)(
    'by %s keep it within its length, and a twentieth less does not',
    (kind) => {
      const cure = cureOf(found, kind);
      expect(cure).toMatchObject({ reaches: true, isProven: true });
      expect(longest(cure.model)).toBeLessThanOrEqual(most);
      const before: Model = {
        ...factory,
        stops: { droop: factory.travel.droop, ...factory.stops },
      };
      expect(longest(withShare(before, cure.model, 0.93))).toBeGreaterThan(most);
    },
  );

  it('say of a stop whether it is moved, or is before that already', () => {
    const kept = cureOf(found, 'droopStop');
    const droop = factory.travel.droop - kept.amount;
    expect(factory.stops!.droop).toBeLessThan(droop);
    expect(kept.says[1]).toBe('less: its stop is before that');
    expect(kept.model.stops!.droop).toBe(factory.stops!.droop);
    const { stops: _, ...free } = factory;
    const moved = cureOf(curesOf(free, key, ['droopStop']), 'droopStop');
    expect(moved.amount).toBe(kept.amount);
    expect(moved.says[1]).toBe('less, by its stop');
    expect(moved.model.stops!.droop).toBeCloseTo(droop, 6);
  });

  it('leave out the wheel and the rod, which do nothing for it', () => {
    expect(found.cures.map(({ kind }) => kind)).toEqual([
      'droopStop',
      'coiloverTop',
      'coiloverBottom',
    ]);
  });

  it('are none where nothing fails, or no part can be changed for it', () => {
    for (const fine of ['coilover.minLength', 'tieRod/tyre', 'stops.bump', 'nothing/here']) {
      expect(allSteps(curesInSteps(factory, fine, undefined, kinds)), fine).toBeNull();
    }
  });
});
