import { describe, expect, it } from 'vitest';
import { MEASURE_KEYS, Measure, Slot } from '../../solver/index.ts';
import { extentOf } from '../../src/scene/camera/extent.ts';
import { drawCamber, drawToe } from '../../src/scene/drawings/angles.ts';
import { drawFrontCentre } from '../../src/scene/drawings/centres.ts';
import { LAYER_DRAWINGS, LIT_DRAWINGS, litDrawing } from '../../src/scene/drawings/chosen.ts';
import { drawEnvelopeName } from '../../src/scene/drawings/envelope.ts';
import { drawOther, lookOf, YESTERDAY_LOOK } from '../../src/scene/drawings/otherDesign.ts';
import { createPaths, followPaths } from '../../src/scene/drawings/paths.ts';
import { arcBetween, type Pen } from '../../src/scene/drawings/pen.ts';
import { drawPlaceMark } from '../../src/scene/drawings/placeMark.ts';
import { drawContact, drawSteeringAxis } from '../../src/scene/drawings/steering.ts';
import type { Drawing, Subject } from '../../src/scene/drawings/subject.ts';
import { gridWords } from '../../src/scene/ground/scale.ts';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { PLACE_MARKS, PLACES } from '../../src/state/marks.ts';
import { placeMark } from '../../src/state/placeMark.ts';
import { hardPoints } from '../../src/state/points.ts';
import { createPosed } from '../../src/state/posed.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';

interface Drawn {
  readonly lines: number[][];
  readonly labels: { at: number[]; text: string; value: number }[];
}

/** Everything a drawing makes of a design at a place. */
function drawn(drawing: Drawing, subject: Subject, sees = true): Drawn {
  const lines: number[][] = [];
  const labels: Drawn['labels'] = [];
  const pen: Pen = {
    line: (...numbers) => lines.push(numbers.slice(0, 6) as number[]),
    label: (x, y, z, _, words, value) =>
      labels.push({ at: [x, y, z], text: words(value, 'mm'), value }),
    sees: () => sees,
  };
  drawing(pen, subject);
  return { lines, labels };
}

function subjectOf(model: Parameters<typeof createDocument>[0], travel: number, rack: number) {
  const documentStore = createDocument(model, 'test');
  const inputs = createInputs(documentStore);
  const posed = createPosed(documentStore, inputs);
  inputs.move(travel, rack);
  const now = posed.current();
  const paths = createPaths();
  followPaths(paths, now.corner, now.pose.data[Slot.rack]!);
  return { now, extent: extentOf(now.corner), paths };
}

const full = subjectOf(FULL_MODEL, 35, 25);

describe('a lit measure', () => {
  it.each([...MEASURE_KEYS, 'rodGap' as const])('%s has a drawing with strokes or words', (key) => {
    const { lines, labels } = drawn(LIT_DRAWINGS[key], full);
    expect(lines.length + labels.length).toBeGreaterThan(0);
    for (const numbers of lines) expect(numbers.every(Number.isFinite)).toBe(true);
    for (const { text } of labels) expect(text).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('that is unknown draws nothing', () => {
    expect(litDrawing(null)).toBeNull();
    expect(litDrawing('wind')).toBeNull();
  });
});

describe('every drawing of every shipped model', () => {
  it.each(SHIPPED)('of %s is made of finite numbers, at the ends of its range too', (name) => {
    const model = shipped(name);
    const places = [
      [0, 0],
      [model.travel.bump, 0],
      [-model.travel.droop, model.steering?.limit?.[1] ?? 0],
    ] as const;
    for (const [travel, rack] of places) {
      const subject = subjectOf(model, travel, rack);
      const drawings = [...Object.values(LAYER_DRAWINGS), ...Object.values(LIT_DRAWINGS)];
      for (const drawing of drawings) {
        const { lines, labels } = drawn(drawing, subject);
        expect(lines.flat().every(Number.isFinite)).toBe(true);
        for (const { text, at } of labels) {
          expect(text).not.toMatch(/NaN|Infinity|undefined/);
          expect(at.every(Number.isFinite)).toBe(true);
        }
      }
    }
  });
});

describe('what is drawn', () => {
  it('points at an instant centre outside the picture, and says how far it is', () => {
    const { data } = full.now.pose;
    const { measures } = full.now;
    const far = Math.hypot(
      measures[Measure.frontViewCentreY]! - data[Slot.contact + 1]!,
      measures[Measure.frontViewCentreZ]! - data[Slot.contact + 2]!,
    );
    expect(drawn(drawFrontCentre, full, false).labels[0]?.value).toBeCloseTo(far, 6);
    expect(drawn(drawFrontCentre, full, false).labels[0]?.text).toMatch(/mm away$/);
  });

  it('is the steering axis: from its ground point through both ball joints', () => {
    const { data } = full.now.pose;
    const [first] = drawn(drawSteeringAxis, full).lines;
    if (first === undefined) throw new Error('There is no axis.');
    const [gx, gy, gz] = first as [number, number, number];
    expect(gz).toBeCloseTo(data[Slot.contact + 2]!, 9);
    for (const slot of [Slot.lower, Slot.upper]) {
      const t = (data[slot + 2]! - gz) / (first[5]! - gz);
      expect(gx + t * (first[3]! - gx)).toBeCloseTo(data[slot]!, 6);
      expect(gy + t * (first[4]! - gy)).toBeCloseTo(data[slot + 1]!, 6);
      expect(t).toBeGreaterThan(0);
      expect(t).toBeLessThan(1);
    }
  });

  it('leads from the axis by scrub radius and trail to the contact itself', () => {
    const { data } = full.now.pose;
    const { lines, labels } = drawn(drawContact, full);
    // After the patch's four sides: the scrub radius, then the trail.
    const [scrub, trail] = [lines[4]!, lines[5]!];
    const long = (line: number[]): number =>
      Math.hypot(line[3]! - line[0]!, line[4]! - line[1]!, line[5]! - line[2]!);
    const { measures } = full.now;
    expect(long(scrub)).toBeCloseTo(Math.abs(measures[Measure.scrubRadius]!), 6);
    expect(long(trail)).toBeCloseTo(Math.abs(measures[Measure.casterTrail]!), 6);
    for (let i = 0; i < 3; i += 1) expect(trail[3 + i]).toBeCloseTo(data[Slot.contact + i]!, 6);
    expect(labels.map(({ text }) => text).join('; ')).toMatch(/scrub radius .* axis; trail/);
  });

  it.each([
    ['camber', drawCamber, Measure.camber],
    ['toe', drawToe, Measure.toe],
  ] as const)('is the true angle of %s', (_, drawing, measure) => {
    const { lines } = drawn(drawing, full);
    const { data } = full.now.pose;
    const centre = [0, 1, 2].map((i) => data[Slot.centre + i]!);
    const way = (line: number[]): number[] => centre.map((part, i) => line[3 + i]! - part);
    // The first dash points where the angle is counted from; the longest stroke is the other side.
    const from = way(lines[0]!);
    const reaches = lines.map((line) => Math.hypot(...way(line)));
    const to = way(lines[reaches.lastIndexOf(Math.max(...reaches))]!);
    const cos =
      from.reduce((sum, part, i) => sum + part * to[i]!, 0) /
      (Math.hypot(...from) * Math.hypot(...to));
    const degrees = (Math.acos(Math.min(1, cos)) * 180) / Math.PI;
    expect(degrees).toBeCloseTo(Math.abs(full.now.measures[measure]!), 4);
  });
});

it('an arc keeps its radius and ends on the second direction', () => {
  const lines: number[][] = [];
  const pen: Pen = {
    line: (...numbers) => lines.push(numbers.slice(0, 6) as number[]),
    label: () => undefined,
    sees: () => true,
  };
  const w = [Math.cos(1.1), 0, Math.sin(1.1)];
  expect(arcBetween(pen, [5, 6, 7], 0, [1, 0, 0], 0, w, 0, 50, 'ink')).toBeCloseTo(1.1, 12);
  for (const [x, y, z] of lines as [number, number, number][]) {
    expect(Math.hypot(x - 5, y - 6, z - 7)).toBeCloseTo(50, 9);
  }
  const last = lines.at(-1)!;
  expect(last[3]).toBeCloseTo(5 + 50 * w[0]!, 9);
  expect(last[5]).toBeCloseTo(7 + 50 * w[2]!, 9);
});

describe('yesterday’s design', () => {
  const outer = FULL_MODEL.tieRod.outer;
  const moved = {
    ...FULL_MODEL,
    tieRod: { ...FULL_MODEL.tieRod, outer: [outer[0], outer[1], outer[2] + 12] as const },
  };

  it('is drawn where it differs, between its own points, and named once', () => {
    const now = subjectOf(moved, 35, 0);
    const held = subjectOf(FULL_MODEL, 35, 0);
    const { lines, labels } = drawn(
      (pen) => drawOther(pen, now.now, held.now, YESTERDAY_LOOK),
      now,
    );
    const { data } = held.now.pose;
    const at = Array.from(data.slice(Slot.outer, Slot.outer + 3));
    expect(lines.some((line) => Math.hypot(...at.map((v, i) => line[3 + i]! - v)) < 1e-9)).toBe(
      true,
    );
    expect(labels.map(({ text }) => text)).toEqual(['yesterday']);
    expect(lines.flat().every(Number.isFinite)).toBe(true);
  });

  it('is not drawn where it is the same', () => {
    const now = subjectOf(FULL_MODEL, 35, 0);
    const held = subjectOf(FULL_MODEL, 35, 0);
    const { lines, labels } = drawn(
      (pen) => drawOther(pen, now.now, held.now, YESTERDAY_LOOK),
      now,
    );
    expect(lines).toEqual([]);
    expect(labels).toEqual([]);
  });
});

describe('a kept design', () => {
  it('is drawn in dashes of its own, named by its letter, its name cut where it is long', () => {
    const now = subjectOf(shipped('half-ton-factory'), 35, 0);
    const other = subjectOf(shipped('half-ton-long-travel'), 35, 0);
    const looks = PLACES.map((key) =>
      lookOf({
        key,
        name: 'a name that goes on for more than forty letters',
        model: other.now.corner.model,
        mark: PLACE_MARKS[key],
        posed: other.now,
      }),
    );
    const counts = looks.map((look) => {
      const { lines, labels } = drawn((pen) => drawOther(pen, now.now, other.now, look), now);
      expect(labels.map(({ text }) => text)).toEqual([
        `${look.tone.at(-1)} a name that goes on for more than forty…`,
      ]);
      return lines.length;
    });
    expect(new Set(counts).size).toBe(PLACES.length);
  });
});

describe('a point that is looked at', () => {
  it('is marked where its body carries it, by its name', () => {
    for (const point of hardPoints(FULL_MODEL)) {
      const drawing = litDrawing(`point:${point.path}`);
      expect(drawing).not.toBeNull();
      const { lines, labels } = drawn(drawing!, full);
      expect(lines).toHaveLength(3);
      expect(labels.map(({ text }) => text)).toEqual([point.label]);
    }
    const { labels } = drawn(litDrawing('point:tieRod.outer')!, full);
    const { data } = full.now.pose;
    for (let i = 0; i < 3; i += 1) expect(labels[0]!.at[i]).toBeCloseTo(data[Slot.outer + i]!, 9);
    expect(drawn(litDrawing('point:tieRod.nothing')!, full).lines).toEqual([]);
  });
});

describe('the ground’s words', () => {
  it('say how far the body stands from ride height, and nothing at it', () => {
    const { extent, now } = subjectOf(FULL_MODEL, 0, 0);
    const says = (ground: number): string[] =>
      drawn((pen) => gridWords(pen, extent, ground, true), { ...full, now }).labels.map(
        ({ text }) => text,
      );
    expect(says(extent.ground).join()).not.toContain('body');
    expect(says(extent.ground - 60)).toContain('body 60 mm higher than at ride height');
    expect(says(extent.ground + 40)).toContain('body 40 mm lower than at ride height');
  });
});

describe('the room for the brake', () => {
  it('is named at its edge, inside the rim, where a model states one', () => {
    const [label] = drawn(drawEnvelopeName, full).labels;
    expect(label?.text).toBe('room for the brake');
    const { data } = full.now.pose;
    const reach = Math.hypot(...label!.at.map((value, i) => value - data[Slot.centre + i]!));
    const radii = FULL_MODEL.brake!.section.map(([s, radius]) => Math.hypot(s, radius));
    expect(reach).toBeLessThanOrEqual(Math.max(...radii) + 1e-9);
    const { brake: _, ...bare } = FULL_MODEL;
    expect(drawn(drawEnvelopeName, subjectOf(bare, 0, 0)).labels).toEqual([]);
  });
});

describe('a centre out of the picture', () => {
  it('is named on the part of its arrow that the picture shows', () => {
    const contact = Array.from(full.now.pose.data.slice(Slot.contact, Slot.contact + 3));
    const near = (x: number, y: number, z: number): boolean =>
      Math.hypot(x - contact[0]!, y - contact[1]!, z - contact[2]!) < 250;
    const labels: number[] = [];
    const pen: Pen = {
      line: () => undefined,
      label: (x, y, z) => {
        labels.push(x, y, z);
      },
      sees: near,
    };
    drawFrontCentre(pen, full);
    expect(labels).toHaveLength(3);
    expect(near(labels[0]!, labels[1]!, labels[2]!)).toBe(true);
  });
});

describe('the place under a probe', () => {
  const { data } = full.now.pose;
  const { tieRod } = FULL_MODEL;

  it.each([
    ['the rack', { place: tieRod.inner, on: 'rack', to: 'outer' }, Slot.inner],
    ['the knuckle', { place: tieRod.outer, on: 'knuckle', to: 'inner' }, Slot.outer],
  ] as const)('is carried by %s to where the joint of the pose is', (_, mark, slot) => {
    placeMark.setState({ mark });
    const { lines, labels } = drawn(drawPlaceMark, full);
    placeMark.setState({ mark: null });
    expect(labels).toHaveLength(1);
    for (const i of [0, 1, 2]) expect(labels[0]!.at[i]).toBeCloseTo(data[slot + i]!, 6);
    const ends = lines.slice(3).map((line) => line.slice(0, 3));
    for (const i of [0, 1, 2]) expect(ends[0]![i]).toBeCloseTo(data[slot + i]!, 6);
  });

  it('is not there without one', () => {
    expect(drawn(drawPlaceMark, full)).toEqual({ lines: [], labels: [] });
  });
});
