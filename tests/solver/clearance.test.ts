import { describe, expect, it } from 'vitest';
import {
  assemble,
  type ChainShape,
  createPairGap,
  createPose,
  frameSlots,
  type LineShape,
  type Model,
  pairGapInto,
  placeParts,
  placeRod,
  readModel,
  rodPointCount,
  Slot,
  shapesOf,
  solve,
  unwatchedPairs,
  type Vector3,
  watchedPairs,
} from '../../solver/index.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const named = (pairs: readonly { readonly names: readonly [string, string] }[]) =>
  pairs.map(({ names }) => names.join('/'));

describe('the shapes of a corner', () => {
  it('are those of the parts the model has, obstacles last', () => {
    const names = (model: Model) => shapesOf(assemble(model)).map(({ name }) => name);
    expect(names(FULL_MODEL)).toEqual([
      'wheel',
      'tyre',
      'tieRod',
      'upperArm',
      'lowerArm',
      'coilover',
      'antiRollBarLink',
      'halfShaft',
      'knuckle',
      'brake',
      'frame rail',
      'crossmember/front',
      'inner wing',
    ]);
    const { coilover, antiRollBar, halfShaft, knuckle, brake, obstacles, ...bare } = FULL_MODEL;
    const { required: _, tolerance: __, unwatched: ___, ...plain } = bare;
    expect(names(plain)).toEqual(['wheel', 'tyre', 'tieRod', 'upperArm', 'lowerArm']);
  });

  it('hold the weights of a wheel, as a line of no thickness', () => {
    const wheel = shapesOf(assemble(FULL_MODEL)).find(({ name }) => name === 'wheel')!;
    const sections = wheel.kind === 'revolved' ? wheel.sections : [];
    expect(sections.map(({ name, half, solid }) => ({ name, half, solid }))).toEqual([
      { name: 'barrel', half: 2.5, solid: false },
      { name: 'disc', half: 2.5, solid: false },
      { name: 'weights', half: 0, solid: false },
    ]);
    expect([...sections[2]!.line]).toEqual(FULL_MODEL.wheel.weights!.flat());
  });

  it('have diameters of common practice where the model states none', () => {
    const { coilover, antiRollBar, halfShaft, lowerArm, upperArm } = FULL_MODEL;
    const without = <T extends object>(part: T, ...keys: (keyof T)[]): T => {
      const rest = { ...part };
      for (const key of keys) delete rest[key];
      return rest;
    };
    const model: Model = {
      ...FULL_MODEL,
      lowerArm: without(lowerArm, 'tubeDiameter'),
      upperArm: without(upperArm, 'tubeDiameter'),
      coilover: without(coilover!, 'diameter'),
      antiRollBar: without(antiRollBar!, 'linkDiameter'),
      halfShaft: without(halfShaft!, 'diameter'),
    };
    const half = (name: string, of: Model = model) => {
      const shape = shapesOf(assemble(of)).find((one) => one.name === name)!;
      if (shape.kind === 'line') return shape.radius;
      return shape.kind === 'chain' ? shape.strands[0]!.radii[0] : null;
    };
    expect(half('lowerArm')).toBe(21);
    expect(half('upperArm')).toBe(15);
    expect(half('coilover')).toBe(33);
    expect(half('halfShaft')).toBe(16);
    // A drop link is no thicker than its bar: that is taken, to be on the safe side.
    expect(half('antiRollBarLink')).toBe(16);
    const bar = without(antiRollBar!, 'linkDiameter', 'diameter');
    expect(half('antiRollBarLink', { ...model, antiRollBar: bar })).toBe(7);
    expect(half('antiRollBarLink', FULL_MODEL)).toBe(7);
  });
});

/** Break points of a chain in vehicle axes. */
function placed(shape: ChainShape, pose: Float64Array): Vector3[] {
  const slots = frameSlots(shape.body);
  return shape.strands.flatMap(({ points }) =>
    Array.from({ length: points.length / 3 }, (_, at) => {
      const own = points.slice(3 * at, 3 * at + 3);
      if (slots === null) return [...own] as unknown as Vector3;
      return [0, 1, 2].map(
        (i) =>
          pose[slots.origin + i]! +
          own[0]! * pose[slots.frame + i]! +
          own[1]! * pose[slots.frame + 3 + i]! +
          own[2]! * pose[slots.frame + 6 + i]!,
      ) as unknown as Vector3;
    }),
  );
}

function chainOf(model: Model, name: string): ChainShape {
  return shapesOf(assemble(model)).find(
    (shape): shape is ChainShape => shape.kind === 'chain' && shape.name === name,
  )!;
}

function expectNear(points: readonly Vector3[], wanted: readonly Vector3[]) {
  expect(points.length).toBe(wanted.length);
  points.forEach((point, i) => {
    point.forEach((v, k) => {
      expect(v).toBeCloseTo(wanted[i]![k]!, 6);
    });
  });
}

describe('the parts of a corner move with their bodies', () => {
  const still = (model: Model): Model => {
    const { frontCam: _, rearCam: __, ...lower } = model.lowerArm;
    const {
      frontCam: ___,
      rearCam: ____,
      frontShim: _____,
      rearShim: ______,
      ...upper
    } = model.upperArm;
    const { turns: _______, ...rod } = model.tieRod;
    return { ...model, lowerArm: lower, upperArm: upper, tieRod: rod };
  };

  it('and stand as measured in the design pose', () => {
    const model = still(FULL_MODEL);
    const corner = assemble(model);
    const pose = createPose();
    solve(corner, pose, 0, 0);
    placeParts(corner, pose.data);
    for (const name of ['lowerArm', 'upperArm'] as const) {
      const { frontPivot, rearPivot, ballJoint, legs } = model[name];
      expectNear(placed(chainOf(model, name), pose.data), [
        frontPivot,
        ...legs!.front,
        ballJoint,
        ...[...legs!.rear].reverse(),
        rearPivot,
      ]);
    }
    expectNear(placed(chainOf(model, 'knuckle'), pose.data), model.knuckle!.tubes![0]!.points);
    expectNear(placed(chainOf(model, 'crossmember/front'), pose.data), [
      [300, 0, -150],
      [300, 380, -150],
    ]);
    const ends = shapesOf(corner)
      .filter((shape): shape is LineShape => shape.kind === 'line')
      .map(({ ends: both }) =>
        both.map((end) =>
          'fixed' in end
            ? end.fixed
            : ([...pose.data.slice(end.slot, end.slot + 3)] as unknown as Vector3),
        ),
      );
    const { coilover, antiRollBar, halfShaft } = model;
    expectNear(ends.flat(), [
      coilover!.top,
      coilover!.bottom,
      antiRollBar!.leverEnd,
      antiRollBar!.link,
      halfShaft!.inner,
      halfShaft!.outer,
    ]);
  });

  it('with pivots that keep their place, cams turned, and ball joints that ride', () => {
    const corner = assemble(FULL_MODEL);
    const pose = createPose();
    for (const [travel, rack] of [
      [80, -50],
      [-90, 40],
    ] as const) {
      expect(solve(corner, pose, travel, rack)).toBe('reached');
      placeParts(corner, pose.data);
      const lower = placed(chainOf(FULL_MODEL, 'lowerArm'), pose.data);
      const upper = placed(chainOf(FULL_MODEL, 'upperArm'), pose.data);
      const { pivots } = corner.linkage;
      const joint = (slot: number) => [...pose.data.slice(slot, slot + 3)] as unknown as Vector3;
      expectNear(
        [lower[0]!, lower.at(-1)!, upper[0]!, upper.at(-1)!, lower[2]!, upper[1]!],
        [
          pivots.lowerFront,
          pivots.lowerRear,
          pivots.upperFront,
          pivots.upperRear,
          joint(Slot.lower),
          joint(Slot.upper),
        ],
      );
      const rod = new Float64Array(3 * rodPointCount(corner));
      placeRod(corner, pose.data, rod);
      const chain = placed(chainOf(FULL_MODEL, 'tieRod'), pose.data);
      const ends = [rod.slice(-3), rod.slice(0, 3)].map((at) => [...at] as unknown as Vector3);
      expectNear([chain[0]!, chain.at(-1)!], ends);
    }
  });
});

describe('pairs', () => {
  it.each(SHIPPED)('of %s are each watched, or there is a reason why not', (name) => {
    const corner = assemble(shipped(name));
    const shapes = shapesOf(corner);
    const watched = watchedPairs(corner);
    const unwatched = unwatchedPairs(corner);
    const keys = [...watched, ...unwatched].map(({ names }) => [...names].sort().join('/'));
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.length).toBe((shapes.length * (shapes.length - 1)) / 2);
    for (const { why } of unwatched) expect(why).toMatch(/^(the|both) [^.]{10,}$/);
    for (const { names, first, second } of watched) {
      expect([first.name, second.name]).toEqual(names);
    }
  });

  it('that are joined are left out, whatever carries what', () => {
    const corner = assemble(shipped('tall-knuckle-crossover'));
    expect(unwatchedPairs(corner).map(({ names, why }) => `${names.join('/')}: ${why}`)).toEqual([
      'wheel/tyre: the tyre is mounted on the wheel',
      'tyre/brake: the wheel’s barrel lies between tyre and brake',
      'tieRod/knuckle: the tie rod’s outer joint is on the knuckle',
      'upperArm/coilover: the coilover stands on the upper arm',
      'upperArm/knuckle: the upper ball joint joins them',
      'lowerArm/knuckle: the lower ball joint joins them',
      'antiRollBarLink/knuckle: the drop link hangs on the knuckle',
      'halfShaft/knuckle: the half-shaft turns in the knuckle’s hub',
      'halfShaft/brake: the half-shaft runs through the brake to the hub',
      'knuckle/brake: the brake is bolted to the knuckle',
    ]);
    const carried = unwatchedPairs(assemble(shipped('half-ton-factory')));
    expect(named(carried)).toEqual(['wheel/tyre', 'lowerArm/coilover', 'lowerArm/antiRollBarLink']);
  });

  it('of the example are all others, named as the trade names them', () => {
    expect(named(watchedPairs(assemble(shipped('half-ton-factory'))))).toEqual([
      'tieRod/wheel',
      'upperArm/wheel',
      'lowerArm/wheel',
      'coilover/wheel',
      'antiRollBarLink/wheel',
      'halfShaft/wheel',
      'wheel/frame rail',
      'tieRod/tyre',
      'upperArm/tyre',
      'lowerArm/tyre',
      'coilover/tyre',
      'antiRollBarLink/tyre',
      'halfShaft/tyre',
      'tyre/frame rail',
      'tieRod/upperArm',
      'tieRod/lowerArm',
      'tieRod/coilover',
      'tieRod/antiRollBarLink',
      'tieRod/halfShaft',
      'tieRod/frame rail',
      'upperArm/lowerArm',
      'upperArm/coilover',
      'upperArm/antiRollBarLink',
      'upperArm/halfShaft',
      'upperArm/frame rail',
      'lowerArm/halfShaft',
      'lowerArm/frame rail',
      'coilover/antiRollBarLink',
      'coilover/halfShaft',
      'coilover/frame rail',
      'antiRollBarLink/halfShaft',
      'antiRollBarLink/frame rail',
      'halfShaft/frame rail',
    ]);
  });

  it('of two obstacles, and of a mesh that is not at hand, say so', () => {
    const why = (pair: string) =>
      unwatchedPairs(assemble(FULL_MODEL)).find(({ names }) => names.join('|') === pair)?.why;
    expect(why('frame rail|crossmember/front')).toBe('both are fixed to the body');
    expect(why('crossmember/front|inner wing')).toBe('both are fixed to the body');
    expect(why('tyre|inner wing')).toBe('the mesh’s file is not at hand');
  });

  it('carry the gap the model wants, however it names the pair', () => {
    const base = shipped('half-ton-factory');
    const wanted = (required: Record<string, number>) => {
      const read = readModel({ ...base, required }, 'test');
      if (!read.ok) throw new Error(read.error.wanted);
      const pairs = watchedPairs(assemble(read.model));
      return (key: string) => pairs.find(({ names }) => names.join('/') === key)!.required;
    };
    const of = wanted({ default: 5, 'wheel/tieRod': 9, 'frame rail/tyre': 20 });
    expect([of('tieRod/wheel'), of('tyre/frame rail'), of('tieRod/tyre')]).toEqual([9, 20, 5]);
    // A pair that is joined may be named, and stays unwatched.
    const joined = wanted({ 'coilover/lowerArm': 3 });
    expect(() => joined('lowerArm/coilover')).toThrow();
  });

  it('on one body have one gap, the others do not', () => {
    const corner = assemble(shipped('tall-knuckle-crossover'));
    const pose = createPose();
    const gaps = watchedPairs(corner).map((pair) => ({ gap: createPairGap(pair), seen: [0, 0] }));
    [
      [-60, 30],
      [70, -40],
    ].forEach(([travel, rack], turn) => {
      expect(solve(corner, pose, travel!, rack!)).toBe('reached');
      placeParts(corner, pose.data);
      for (const { gap, seen } of gaps) {
        pairGapInto(gap, pose);
        seen[turn] = gap.gap;
      }
    });
    const constant = gaps.filter(({ gap }) => gap.pair.isConstant);
    expect(named(constant.map(({ gap }) => gap.pair))).toEqual([
      'knuckle/wheel',
      'wheel/brake',
      'knuckle/tyre',
    ]);
    for (const { seen } of constant) expect(seen[0]).toBeCloseTo(seen[1]!, 6);
    // Of others too a joint on the knuckle may be nearest; but most change.
    const same = gaps.filter(({ seen }) => Math.abs(seen[0]! - seen[1]!) < 1e-6);
    expect(same.length).toBeLessThan(gaps.length / 4);
  });
});

describe('the shipped corners', () => {
  it('touch nowhere over their range but where their notes say so', () => {
    const touching: Record<string, string[]> = {};
    for (const name of SHIPPED.filter((one) => one !== 'half-ton-factory')) {
      const model = shipped(name);
      const corner = assemble(model);
      const pose = createPose();
      const gaps = watchedPairs(corner).map(createPairGap);
      const least = gaps.map(() => Number.POSITIVE_INFINITY);
      const { bump, droop } = model.travel;
      const [right, left] = model.steering!.limit!;
      for (let i = 0; i <= 16; i += 1) {
        for (let j = 0; j <= 8; j += 1) {
          const travel = -droop + ((droop + bump) * i) / 16;
          solve(corner, pose, travel, right + ((left - right) * j) / 8);
          placeParts(corner, pose.data);
          gaps.forEach((gap, at) => {
            pairGapInto(gap, pose);
            least[at] = Math.min(least[at]!, gap.gap);
          });
        }
      }
      touching[name] = named(gaps.map(({ pair }) => pair)).filter((_, at) => least[at]! <= 0);
    }
    expect(touching).toEqual({
      'half-ton-long-travel': ['tieRod/wheel'],
      'planar-equal-arms': [],
      'rear-steer-saloon': [],
      'tall-knuckle-crossover': [],
    });
  });
});
