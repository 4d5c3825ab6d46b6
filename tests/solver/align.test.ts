/**
 * Alignment: settings found are held to the pose solver, to settings that are known to reach the targets, and to a search that
 * knows nothing of how they are found. All hardware is invented.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  align,
  type Model,
  PIVOT_HARDWARE,
  presentSettings,
  type Settings,
  withSettings,
} from '../../solver/index.ts';
import { buildable } from '../support/arbitraries.ts';
import { shipped } from '../support/models.ts';
import { standing } from '../support/standing.ts';

const { targets: _, ...FACTORY } = shipped('half-ton-factory');
const KEYS = ['camber', 'caster', 'toe'] as const;

type Arm = 'lowerArm' | 'upperArm';

/** The model with cams of these throws on the pivots named, and no others. */
function withCams(model: Model, throws: Partial<Record<string, number>>): Model {
  const cams = (arm: Arm) => {
    const { frontCam: _f, rearCam: _r, ...rest } = model[arm];
    const of = (end: string) => throws[`${arm}.${end}`];
    const [front, rear] = [of('front'), of('rear')];
    return {
      ...rest,
      ...(front === undefined ? {} : { frontCam: { throw: front } }),
      ...(rear === undefined ? {} : { rearCam: { throw: rear } }),
    };
  };
  const { frontShim: _s, rearShim: __s, ...upper } = cams('upperArm') as Model['upperArm'];
  return { ...model, lowerArm: cams('lowerArm'), upperArm: upper };
}

const FOUR = withCams(FACTORY, {
  'lowerArm.front': 7,
  'lowerArm.rear': 6,
  'upperArm.front': 4,
  'upperArm.rear': 5,
});

/** Total turn of the cams, degrees. */
function turnOf(settings: Settings): number {
  return PIVOT_HARDWARE.reduce(
    (sum, name) => sum + (name.endsWith('Cam') ? Math.abs(settings[name] ?? 0) : 0),
    0,
  );
}

function expectReached(model: Model, targets: Partial<Record<(typeof KEYS)[number], number>>) {
  const answer = align(model, targets);
  expect(answer.reached).toBe(true);
  const angles = standing(withSettings(model, answer.after.settings));
  expect(angles).toEqual(answer.after.angles);
  for (const key of KEYS) {
    const wanted = targets[key];
    if (wanted !== undefined) expect(Math.abs(angles![key] - wanted)).toBeLessThan(1e-9);
  }
  return answer;
}

/** An angle of a cam, most of them well inside, some near its end. */
const turn = fc.double({ min: -88, max: 88, noNaN: true });

describe('forward and back', () => {
  test('two cams and the tie rod come back to the settings that made the angles', () => {
    fc.assert(
      fc.property(
        buildable,
        turn,
        turn,
        fc.double({ min: -3, max: 3, noNaN: true }),
        (drawn, front, rear, turns) => {
          const { targets: _t, ...model } = withCams(drawn, {
            'lowerArm.front': 6,
            'lowerArm.rear': 6,
          });
          const set = { lowerFrontCam: front, lowerRearCam: rear, tieRodTurns: turns };
          const targets = standing(withSettings(model, set));
          fc.pre(targets !== null);
          const { settings } = expectReached(model, targets!).after;
          expect(settings.lowerFrontCam!).toBeCloseTo(front, 6);
          expect(settings.lowerRearCam!).toBeCloseTo(rear, 6);
          expect(settings.tieRodTurns).toBeCloseTo(turns, 8);
        },
      ),
      { seed: 41, numRuns: 40 },
    );
  });

  test('of many settings the one with no more turn than any that is known', () => {
    fc.assert(
      fc.property(buildable, fc.tuple(turn, turn, turn, turn), (drawn, angles) => {
        const { targets: _t, ...model } = drawn;
        const [lowerFrontCam, lowerRearCam, upperFrontCam, upperRearCam] = angles;
        const set = { lowerFrontCam, lowerRearCam, upperFrontCam, upperRearCam };
        const targets = standing(withSettings(model, set));
        fc.pre(targets !== null);
        const { settings } = expectReached(model, targets!).after;
        const known: Settings = { ...set, tieRodTurns: 0 };
        expect(turnOf(settings)).toBeLessThanOrEqual(turnOf(known) + 1e-6);
      }),
      { seed: 42, numRuns: 15 },
    );
  });

  test('where it stands already, nothing is turned', () => {
    const { work, after } = align(FACTORY);
    expect(after.settings.lowerFrontCam).toBeCloseTo(0, 9);
    expect(after.settings.tieRodTurns).toBeCloseTo(0, 9);
    expect(work.map(({ at }) => at)).toEqual(['lowerFrontCam', 'lowerRearCam', 'tieRod']);
  });
});

describe('the least turn', () => {
  /** The two lower cams and the turns that go with the upper cams given, by differences; null where there are none. */
  function lowerFor(
    model: Model,
    targets: readonly number[],
    upper: readonly [number, number],
    start: readonly number[],
  ): Settings | null {
    let x = [...start];
    const set = (values: readonly number[]): Settings => ({
      lowerFrontCam: values[0]!,
      lowerRearCam: values[1]!,
      upperFrontCam: upper[0],
      upperRearCam: upper[1],
      tieRodTurns: values[2]!,
    });
    const miss = (values: readonly number[]) => {
      const angles = standing(withSettings(model, set(values)));
      return angles && KEYS.map((key, i) => angles[key] - targets[i]!);
    };
    for (let step = 0; step < 15; step += 1) {
      const now = miss(x);
      if (now === null) return null;
      if (Math.max(...now.map(Math.abs)) < 1e-10) {
        return Math.abs(x[0]!) <= 90 && Math.abs(x[1]!) <= 90 ? set(x) : null;
      }
      const slopes = [0, 1, 2].map((k) => {
        const [up, down] = [1e-3, -1e-3].map((by) => miss(x.map((v, i) => (i === k ? v + by : v))));
        return up!.map((value, i) => (value - down![i]!) / 2e-3);
      });
      const det = (columns: readonly (readonly number[])[]) => {
        const [a, b, c] = columns as [number[], number[], number[]];
        return (
          a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) -
          b[0]! * (a[1]! * c[2]! - a[2]! * c[1]!) +
          c[0]! * (a[1]! * b[2]! - a[2]! * b[1]!)
        );
      };
      const whole = det(slopes);
      x = x.map((value, k) => {
        const change = det(slopes.map((column, i) => (i === k ? now : column))) / whole;
        return value - Math.max(-15, Math.min(15, change));
      });
    }
    return null;
  }

  const ENDS = [-75, -40, 0, 40, 75];

  /** Least total turn by trying: from the best of a coarse grid of upper settings, smaller and smaller steps all about. */
  function byTrying(model: Model, targets: readonly number[]): number {
    const grid = ENDS.flatMap((front) =>
      ENDS.flatMap((rear) => lowerFor(model, targets, [front, rear], [0, 0, 0]) ?? []),
    );
    let at = grid.reduce((best, each) => (turnOf(each) < turnOf(best) ? each : best));
    for (let step = 16; step > 0.02; ) {
      const { lowerFrontCam, lowerRearCam, upperFrontCam, upperRearCam, tieRodTurns } = at;
      const start = [lowerFrontCam!, lowerRearCam!, tieRodTurns];
      const tried = Array.from({ length: 8 }, (_t, i) => {
        const [dx, dy] = [Math.cos((Math.PI * i) / 4), Math.sin((Math.PI * i) / 4)];
        const next = [upperFrontCam! + step * dx, upperRearCam! + step * dy] as const;
        return Math.max(...next.map(Math.abs)) > 90 ? null : lowerFor(model, targets, next, start);
      });
      const better = tried.find((each) => each !== null && turnOf(each) < turnOf(at) - 1e-9);
      if (better) at = better;
      else step /= 2;
    }
    return turnOf(at);
  }

  test.each([
    [{ camber: -0.2, caster: 4.2 }],
    [{ camber: -1.2, caster: 5.5 }],
    // Near the edge of what four cams reach: all of them turn.
    [{ camber: -0.2, caster: 8 }],
  ])('of four cams is what trying finds: %j', (wanted) => {
    const { after, aims } = expectReached(FOUR, wanted);
    const least = byTrying(
      FOUR,
      KEYS.map((key) => aims[key].value),
    );
    expect(turnOf(after.settings)).toBeLessThan(least + 1e-6);
    // What is found stands there, so it cannot be too little; trying must come near for this to mean anything.
    expect(turnOf(after.settings)).toBeGreaterThan(least - 1);
  });

  test('shims do it alone where they can, and cams only what is left', () => {
    const long = shipped('half-ton-long-travel');
    const { settings } = expectReached(long, { camber: 0, caster: 4.5 }).after;
    expect([settings.lowerFrontCam, settings.lowerRearCam]).toEqual([0, 0]);
    expect(settings.upperFrontShim! + settings.upperRearShim!).toBeGreaterThan(1);
    const { after } = expectReached(long, { camber: -0.5, caster: 4.5 });
    expect([after.settings.upperFrontShim, after.settings.upperRearShim]).toEqual([0, 0]);
    expect(turnOf(after.settings)).toBeGreaterThan(10);
  });

  test('hardware that moves nothing stays at 0', () => {
    const still = withCams(FACTORY, {
      'lowerArm.front': 7,
      'lowerArm.rear': 7,
      'upperArm.front': 0,
    });
    const { settings } = expectReached(still, { caster: 4.6 }).after;
    expect(settings.upperFrontCam).toBe(0);
  });
});

/**
 * Common practice, no source: two cams on one lower arm the same way change camber only, opposite ways caster only, when the ball
 * joint stands midway; a cam is lively in the middle and dead near 90 degrees.
 */
describe('two cams on one arm', () => {
  const { lowerArm, upperArm } = FACTORY;
  const midway: Model = {
    ...FACTORY,
    lowerArm: {
      ...lowerArm,
      frontPivot: [190, 400, -92],
      rearPivot: [-190, 400, -92],
      ballJoint: [0, 772, -118],
    },
    upperArm: { ...upperArm, frontPivot: [130, 474, 203], rearPivot: [-130, 474, 203] },
  };

  test.each([
    ['the same way: camber only', { lowerFrontCam: 20, lowerRearCam: 20 }, 'camber', 'caster'],
    ['opposite ways: caster only', { lowerFrontCam: 20, lowerRearCam: -20 }, 'caster', 'camber'],
  ] as const)('%s', (_title, set, moved, still) => {
    const [home, there] = [standing(midway)!, standing(withSettings(midway, set))!];
    const [much, little] = [moved, still].map((key) => Math.abs(there[key] - home[key]));
    expect(much).toBeGreaterThan(0.3);
    expect(little).toBeLessThan(0.06 * much!);
  });

  test('dead near 90 degrees: the last ten degrees move less than a tenth of the first ten', () => {
    const at = (lowerFrontCam: number) =>
      standing(withSettings(FACTORY, { lowerFrontCam }))!.camber;
    expect(Math.abs(at(90) - at(80))).toBeLessThan(0.1 * Math.abs(at(10) - at(0)));
  });
});

describe('out of reach', () => {
  test('the nearest is told, what runs out is named, and toe is set all the same', () => {
    const answer = align(FACTORY, { camber: 0.4, caster: 9, toe: 0.1 });
    expect(answer.reached).toBe(false);
    expect(answer.runsOut).toContain('lowerRearCam');
    const { camber, caster, toe } = answer.after.angles!;
    expect(toe).toBeCloseTo(0.1, 9);
    const miss = Math.hypot(camber - 0.4, caster - 9);
    for (let front = -90; front <= 90; front += 10) {
      for (let rear = -90; rear <= 90; rear += 10) {
        const set = {
          lowerFrontCam: front,
          lowerRearCam: rear,
          tieRodTurns: answer.after.settings.tieRodTurns,
        };
        const there = standing(withSettings(FACTORY, set))!;
        // Toe is not held here: it moves camber and caster by hundredths.
        expect(Math.hypot(there.camber - 0.4, there.caster - 9)).toBeGreaterThan(miss - 0.02);
      }
    }
  });

  test('a nearest within the tolerances is said to be, and stays unreached', () => {
    const { reached, after, before } = align(shipped('rear-steer-saloon'));
    expect([reached, before.isWithin, after.isWithin]).toEqual([false, false, true]);
  });

  test('hardware that is lacking is named', () => {
    const { pitch: _p, ...tieRod } = FACTORY.tieRod;
    const none = withCams({ ...FACTORY, tieRod }, {});
    expect(align(none, { camber: 0, toe: 0.1 }).lacks).toEqual(['camber', 'toe']);
    expect(align(none)).toMatchObject({ reached: true, lacks: [], work: [] });
    const noPitch = { ...FACTORY, tieRod };
    expect(align(noPitch, { camber: 0, caster: 4.5, toe: 0.08 }).lacks).toEqual(['toe']);
    const one = withCams(FACTORY, { 'lowerArm.rear': 7 });
    expect(align(one, { camber: 0, caster: 4.2 }).lacks).toEqual(['camber', 'caster']);
  });

  test('what nothing can hold follows', () => {
    const one = withCams(FACTORY, { 'lowerArm.rear': 7 });
    const { aims, after } = expectReached(one, { camber: -0.5, toe: 0.1 });
    expect(aims.caster.isHeld).toBe(false);
    expect(Math.abs(after.angles!.caster - aims.caster.value)).toBeGreaterThan(0.1);
    expectReached(withCams(FACTORY, {}), { toe: 0.2 });
    const { pitch: _p, ...tieRod } = FACTORY.tieRod;
    const noPitch = expectReached({ ...FACTORY, tieRod }, { camber: -0.3, caster: 4.5 });
    expect(noPitch.aims.toe.isHeld).toBe(false);
    expect(noPitch.after.settings.tieRodTurns).toBe(0);
  });

  test('a toe that the tie rod cannot hold is gone towards, never NaN', () => {
    const answer = align(FACTORY, { toe: 170 });
    expect(answer.reached).toBe(false);
    expect(answer.after.angles!.toe).toBeGreaterThan(20);
    expect(JSON.stringify(answer)).not.toContain('null,"isWithin"');
  });

  test('a corner that cannot stand at ride says what fails', () => {
    const lifted = { ...FACTORY, travel: { ...FACTORY.travel, ride: -900 } };
    const answer = align(lifted, { camber: 0, caster: 4, toe: 0 });
    expect(answer).toMatchObject({ reached: false, runsOut: [], work: [] });
    expect(answer.fails).not.toBeNull();
    expect(answer.after.angles).toBeNull();
  });

  test('settings that break the corner are left behind', () => {
    const broken = withSettings(FACTORY, { tieRodTurns: 400 });
    expect(standing(broken)).toBeNull();
    const { reached, before, after } = align(broken, { camber: -0.2, caster: 4.8, toe: 0.1 });
    expect(before.angles).toBeNull();
    expect(reached).toBe(true);
    expect(Math.abs(after.settings.tieRodTurns)).toBeLessThan(2);
  });
});

describe('whole marks, shims and flats', () => {
  const marked = (model: Model): Model => ({
    ...model,
    lowerArm: {
      ...model.lowerArm,
      frontCam: { throw: 7, marks: 24 },
      rearCam: { throw: 7, marks: 24, angle: 15 },
    },
    tieRod: { ...model.tieRod, flats: 6 },
  });

  test('counts are whole from where things are now, and what they give is solved', () => {
    const model = marked(FACTORY);
    const { rounded, work, after, before } = align(model, { camber: 0, caster: 4.4, toe: 0.1 });
    const { settings, angles } = rounded!;
    expect(angles).toEqual(standing(withSettings(model, settings)));
    for (const step of work) {
      const now = step.at === 'tieRod' ? before.settings.tieRodTurns : before.settings[step.at]!;
      const size = step.at === 'tieRod' ? 1 / 6 : 15;
      expect(step.whole).toBeCloseTo(now + step.count * size, 9);
      if (step.at !== 'tieRod')
        expect(step.exactCount).toBeCloseTo((step.to - step.from) / size, 9);
    }
    // A flat of a sixth of 1.5 mm is worth 0.1 degrees at most: toe is within half of it.
    expect(Math.abs(angles!.toe - 0.1)).toBeLessThan(0.07);
    expect(presentSettings(withSettings(model, after.settings))).toEqual(after.settings);
  });

  test('no other whole counts next to the exact ones come nearer', () => {
    const model = marked(FACTORY);
    const { rounded, after } = align(model, { camber: 0, caster: 4.4, toe: 0.1 });
    const miss = ({ camber, caster }: { camber: number; caster: number }) =>
      Math.hypot(camber, caster - 4.4);
    const sides = (exact: number) => [Math.floor(exact / 15) * 15, Math.ceil(exact / 15) * 15];
    for (const lowerFrontCam of sides(after.settings.lowerFrontCam!)) {
      for (const lowerRearCam of sides(after.settings.lowerRearCam!)) {
        const set = { ...rounded!.settings, lowerFrontCam, lowerRearCam };
        const there = standing(withSettings(model, set))!;
        expect(miss(rounded!.angles!)).toBeLessThan(miss(there) + 0.01);
      }
    }
  });

  test('shims move the pivot by their thickness, as if the point had been measured there', () => {
    const { upperArm } = FACTORY;
    const [x, y, z] = upperArm.frontPivot;
    const shimmed = {
      ...FACTORY,
      upperArm: { ...upperArm, frontShim: { direction: [0, -2, 0] as const, thickness: 3 } },
    };
    const cammed = {
      ...FACTORY,
      upperArm: { ...upperArm, frontCam: { slot: [0, -1, 0] as const, throw: 3, angle: 90 } },
    };
    expect(standing(shimmed)).toEqual(standing(cammed));
    expect([x, y, z]).toEqual(shimmed.upperArm.frontPivot);
  });
});
