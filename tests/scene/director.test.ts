import { PerspectiveCamera, Vector3 } from 'three';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { type Model, Slot, tyreSections } from '../../solver/index.ts';
import { rackRange } from '../../solver/model/defaults.ts';
import { insetsOf } from '../../src/panels/insets.ts';
import { createDirector, type Director } from '../../src/scene/camera/director.ts';
import { extentOf } from '../../src/scene/camera/extent.ts';
import { documentStore, inputs, posed, view } from '../../src/state/bench.ts';
import { travelRange } from '../../src/state/inputs.ts';
import { hardPoints } from '../../src/state/points.ts';
import type { Insets, Viewpoint } from '../../src/state/view.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const MODELS = [
  ...SHIPPED.map((name) => ({ name, model: shipped(name) })),
  { name: 'full', model: FULL_MODEL },
];
const VIEWPOINTS: readonly Viewpoint[] = ['threeQuarter', 'front', 'side', 'above', 'alongRod'];

interface Room {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly insets: Insets;
}

/** What panels of about the page's sizes leave free. */
function desk(width: number, height: number, open: readonly string[]): Room {
  const rect = (left: number, top: number, w: number, h: number) => ({
    left,
    top,
    right: left + w,
    bottom: top + h,
  });
  const right = open.includes('sheet') ? 450 : open.includes('readings') ? 310 : 0;
  const covering = [
    rect(0, 0, width, 46),
    rect(width - right - 64, 56, 64, 324),
    rect((width - right - 64) / 2, height - 190, 360, 190),
    ...(right > 0 ? [rect(width - right, 56, right - 10, height - 66)] : []),
    ...(open.includes('map') ? [rect(10, height - 316, 332, 306)] : []),
    ...(open.includes('points') ? [rect(10, 56, 332, height - 380)] : []),
  ];
  return {
    name: `${width} × ${height} with ${open.join(', ') || 'nothing'}`,
    width,
    height,
    insets: insetsOf(width, height, covering),
  };
}

const ROOMS: readonly Room[] = [
  desk(1440, 900, []),
  desk(1440, 900, ['readings', 'map']),
  desk(1440, 900, ['readings', 'map', 'points']),
  desk(1440, 900, ['sheet', 'map', 'points']),
  desk(1024, 768, ['readings', 'map']),
  desk(1024, 768, ['sheet', 'map', 'points']),
  desk(1280, 720, ['readings', 'map', 'points']),
  desk(2560, 1440, ['readings', 'map', 'points']),
  { name: 'phone', width: 390, height: 844, insets: { top: 48, right: 0, bottom: 490, left: 0 } },
  { name: 'side', width: 844, height: 390, insets: { top: 44, right: 400, bottom: 0, left: 0 } },
  { name: 'zoomed', width: 720, height: 450, insets: { top: 44, right: 388, bottom: 0, left: 0 } },
];

/** Points around the tyre at three places across it, the moving joints, and the model's own points: vehicle axes. */
function boundingPoints(model: Model): number[][] {
  const { data } = posed.current().pose;
  const vector = (at: number): Vector3 => new Vector3().fromArray(Array.from(data), at);
  const [centre, axis, up] = [Slot.centre, Slot.hubAxis, Slot.wheelUp].map(vector);
  const points: number[][] = [];
  for (const { line } of tyreSections(model)) {
    for (let at = 0; at + 1 < line.length; at += 2) {
      for (let step = 0; step < 12; step += 1) {
        const spoke = up!.clone().applyAxisAngle(axis!, 0.1 + (step * Math.PI) / 6);
        const point = centre!.clone().addScaledVector(spoke, line[at + 1]!);
        points.push(point.addScaledVector(axis!, line[at]!).toArray());
      }
    }
  }
  for (const slot of [Slot.lower, Slot.upper, Slot.outer, Slot.inner])
    points.push(vector(slot).toArray());
  return points;
}

function stillPoints(model: Model): number[][] {
  return hardPoints(model)
    .filter(({ group, path }) => group !== 'obstacles' && !path.startsWith('antiRollBar.axis'))
    .map((point) => [...point.get(model)]);
}

const camera = new PerspectiveCamera(26, 1, 10, 10_000);
const controls = {
  target: new Vector3(),
  minDistance: 0,
  maxDistance: Number.POSITIVE_INFINITY,
};
let director: Director;
let time = 0;

/** Runs frames until the camera rests. */
function rest(): void {
  for (let frame = 0; frame < 60; frame += 1) {
    time += 16;
    const goesOn = director.step(controls);
    director.settle(controls);
    if (!goesOn && frame > 0) return;
  }
  throw new Error('The camera does not come to rest.');
}

/** Where a point is drawn, px from the window's top left corner. */
function drawn([x = 0, y = 0, z = 0]: readonly number[], { width, height }: Room) {
  const at = new Vector3(x, z, -y).project(camera);
  return [((at.x + 1) / 2) * width, ((1 - at.y) / 2) * height] as const;
}

function expectInside(points: readonly number[][], room: Room): void {
  const { insets, width, height } = room;
  let out = 0;
  let reached = 0;
  for (const point of points) {
    const [x, y] = drawn(point, room);
    out = Math.max(
      out,
      insets.left - x,
      x - (width - insets.right),
      insets.top - y,
      y - (height - insets.bottom),
    );
    reached = Math.max(reached, Math.abs(x), Math.abs(y));
  }
  expect(Number.isFinite(reached)).toBe(true);
  expect(out, `px outside the free rectangle, ${room.name}`).toBeLessThanOrEqual(0);
}

function resize(room: Room): void {
  camera.aspect = room.width / room.height;
  director.resize(room.width, room.height);
}

/** As a window whose panels have settled. */
function furnish(room: Room): void {
  view.setState({ insets: room.insets });
  resize(room);
  rest();
}

beforeEach(() => {
  vi.stubGlobal('matchMedia', () => ({ matches: false }));
  vi.spyOn(performance, 'now').mockImplementation(() => time);
  view.setState({ viewpoint: 'threeQuarter' });
  let of = posed.current().corner;
  let extent = extentOf(of);
  director = createDirector(camera, {
    extent: () => {
      const { corner } = posed.current();
      if (corner !== of) extent = extentOf(corner);
      of = corner;
      return extent;
    },
  } as Parameters<typeof createDirector>[1]);
  view.subscribe((state, before) => {
    if (state.insets !== before.insets) director.refit();
  });
});

describe.each(MODELS)('the corner of $name', ({ name, model }) => {
  it.each(VIEWPOINTS)(
    'stands in the free rectangle at ride height, full bump and full droop, from %s',
    (viewpoint) => {
      documentStore.load(model, name);
      view.look(viewpoint);
      for (const room of ROOMS) {
        const [droop, bump] = travelRange(model);
        for (const travel of [0, bump, droop]) {
          inputs.move(travel, 0);
          furnish(room);
          const still = viewpoint === 'alongRod' ? [] : stillPoints(model);
          expectInside([...boundingPoints(model), ...still], room);
        }
      }
    },
  );
});

describe('the camera', () => {
  const [wide, crowded] = [ROOMS[0]!, ROOMS[3]!];

  it('gives no room away', () => {
    const model = shipped('half-ton-factory');
    documentStore.load(model, 'a');
    furnish(crowded);
    const { insets, width, height } = crowded;
    const middle = [
      (insets.left + width - insets.right) / 2,
      (insets.top + height - insets.bottom) / 2,
    ];
    let share = 0;
    const [droop, bump] = travelRange(model);
    const [right, left] = rackRange(model.steering);
    for (const [travel, rack] of [
      [droop, 0],
      [bump, 0],
      [0, right],
      [0, left],
    ] as const) {
      inputs.move(travel, rack);
      for (const point of [...boundingPoints(model), ...stillPoints(model)]) {
        const [x, y] = drawn(point, crowded);
        share = Math.max(
          share,
          Math.abs(x - middle[0]!) / (width - insets.right - middle[0]!),
          Math.abs(y - middle[1]!) / (height - insets.bottom - middle[1]!),
        );
      }
    }
    expect(share).toBeGreaterThan(0.9);
    expect(share).toBeLessThan(1);
  });

  it('glides into what is left when a panel opens, and back, without a jump', () => {
    documentStore.load(shipped('half-ton-factory'), 'a');
    inputs.move(0, 0);
    furnish(wide);
    const at = (): readonly [number, number] => drawn([0, 700, 0], crowded);
    const before = at();
    view.setState({ insets: crowded.insets });
    time += 16;
    director.step(controls);
    director.settle(controls);
    const first = at();
    expect(Math.hypot(first[0] - before[0], first[1] - before[1])).toBeLessThan(12);
    rest();
    expectInside(boundingPoints(shipped('half-ton-factory')), crowded);
    expect(Math.hypot(at()[0] - before[0], at()[1] - before[1])).toBeGreaterThan(30);
    view.setState({ insets: wide.insets });
    rest();
    expect(at()[0]).toBeCloseTo(before[0], 6);
  });

  it('keeps the direction the hand has chosen, and what is seen in the free part', () => {
    const model = shipped('half-ton-long-travel');
    documentStore.load(model, 'b');
    inputs.move(0, 0);
    furnish(wide);
    const offset = camera.position.clone().sub(controls.target);
    camera.position.copy(controls.target).add(offset.applyAxisAngle(new Vector3(0, 1, 0), 0.3));
    camera.lookAt(controls.target);
    director.leave();
    director.settle(controls);
    const facing = camera.getWorldDirection(new Vector3());
    for (const room of [crowded, wide, ROOMS[2]!]) {
      view.setState({ insets: room.insets });
      rest();
      expect(camera.getWorldDirection(new Vector3()).distanceTo(facing)).toBeLessThan(1e-6);
      expectInside(boundingPoints(model), room);
    }
    const kept = controls.target.clone();
    view.setState({ insets: wide.insets });
    rest();
    expect(controls.target.distanceTo(kept)).toBeLessThan(1e-6);
  });

  it('frames a model that was loaded, and a large edit once the hand lets go of it', () => {
    const [small, large] = [shipped('rear-steer-saloon'), shipped('half-ton-long-travel')];
    documentStore.load(small, 'small');
    inputs.move(0, 0);
    furnish(crowded);
    documentStore.load(large, 'large');
    inputs.move(travelRange(large)[0], 0);
    rest();
    expectInside([...boundingPoints(large), ...stillPoints(large)], crowded);
    inputs.move(0, 0);
    const stood = camera.position.clone();
    documentStore.beginGesture();
    documentStore.edit((model) => ({
      ...model,
      travel: { ...model.travel, droop: model.travel.droop * 0.3 },
    }));
    rest();
    expect(camera.position.distanceTo(stood)).toBeLessThan(1e-6);
    documentStore.endGesture();
    rest();
    expect(camera.position.distanceTo(stood)).toBeGreaterThan(10);
  });
});
