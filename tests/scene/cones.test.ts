import { Mesh, type MeshBasicMaterial, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { Measure, type Model } from '../../solver/index.ts';
import { extentOf } from '../../src/scene/camera/extent.ts';
import { createCones } from '../../src/scene/drawings/cones.ts';
import { drawJointCones, drawLowerJoint } from '../../src/scene/drawings/joints.ts';
import { createPaths } from '../../src/scene/drawings/paths.ts';
import type { Pen } from '../../src/scene/drawings/pen.ts';
import { PALETTES } from '../../src/scene/palette.ts';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { createPosed } from '../../src/state/posed.ts';
import { angle } from '../../src/words/format.ts';
import { FULL_MODEL } from '../support/full-model.ts';

function posedAt(model: Model, travel: number, rack: number) {
  const documentStore = createDocument(model, 'test');
  const inputs = createInputs(documentStore);
  const posed = createPosed(documentStore, inputs);
  inputs.move(travel, rack);
  const now = posed.current();
  return { now, extent: extentOf(now.corner), paths: createPaths() };
}

type Subject = ReturnType<typeof posedAt>;

function drawn(drawing: typeof drawJointCones, subject: Subject) {
  const labels: { text: string; tone: string }[] = [];
  const cones: { axis: number[]; half: number; tone: string }[] = [];
  const pen: Pen = {
    line: () => undefined,
    label: (_x, _y, _z, tone, words, value) => labels.push({ text: words(value, 'mm'), tone }),
    sees: () => true,
    cone: (_x, _y, _z, ux, uy, uz, _reach, half, tone) =>
      cones.push({ axis: [ux, uy, uz], half, tone }),
  };
  drawing(pen, subject);
  return { labels, cones };
}

/** The full model with this limit of its lower ball joint. */
function limited(limit: number | undefined): Model {
  const { ballJointLimit: _, ...arm } = FULL_MODEL.lowerArm;
  return {
    ...FULL_MODEL,
    lowerArm: limit === undefined ? arm : { ...arm, ballJointLimit: limit },
  };
}

describe('the joints’ cones', () => {
  const angles = posedAt(FULL_MODEL, 35, 25).now.measures;
  const now = angles[Measure.lowerBallJoint]!;

  it('name all six joints once, with the solver’s own angle', () => {
    const { labels } = drawn(drawJointCones, posedAt(limited(undefined), 35, 25));
    expect(labels).toHaveLength(6);
    expect(labels[0]!.text).toBe(`lower ball joint ${angle(now, 1)}, no limit stated`);
  });

  it.each([
    [12, 'accent', 'soft', (left: number) => `lower ball joint ${angle(left, 1)} left`],
    [2, 'near', 'near', (left: number) => `lower ball joint ${angle(left, 1)} left`],
    [-1, 'touch', 'touch', (left: number) => `lower ball joint ${angle(-left, 1)} past its limit`],
  ] as const)('with %d° left are said and coloured so', (left, tone, glass, words) => {
    const { labels, cones } = drawn(drawJointCones, posedAt(limited(now + left), 35, 25));
    expect(labels[0]).toEqual({ text: words(left), tone });
    const [first] = cones;
    expect(first!.half).toBeCloseTo(now + left, 9);
    expect(first!.tone).toBe(glass);
    expect(Math.hypot(...first!.axis)).toBeCloseTo(1, 9);
  });

  it('have no glass where no limit is stated', () => {
    const { cones } = drawn(drawLowerJoint, posedAt(limited(undefined), 35, 25));
    expect(cones).toEqual([]);
  });
});

describe('cones of glass', () => {
  it('stand on their tips, as wide as their half-angle, and are put away when not drawn', () => {
    const cones = createCones();
    cones.paint(PALETTES.light);
    cones.begin();
    cones.cone(10, 20, 30, 0, 0.6, 0.8, 150, 25, 'touch');
    cones.end();
    const shown = cones.object.children.filter(({ visible }) => visible) as Mesh[];
    expect(shown).toHaveLength(1);
    const [mesh] = shown;
    const places = mesh!.geometry.getAttribute('position');
    const tip = new Vector3(10, 20, 30);
    const axis = new Vector3(0, 0.6, 0.8);
    const place = new Vector3();
    let rim = 0;
    for (let i = 0; i < places.count; i += 1) {
      place.fromBufferAttribute(places, i).applyMatrix4(mesh!.matrix).sub(tip);
      if (place.length() < 1e-3) continue;
      rim += 1;
      expect(place.length()).toBeCloseTo(150, 3);
      expect((place.angleTo(axis) * 180) / Math.PI).toBeCloseTo(25, 3);
    }
    expect(rim).toBeGreaterThan(20);
    const { color } = mesh!.material as MeshBasicMaterial;
    expect(`#${color.getHexString()}`).toBe(PALETTES.light.tones.touch);
    cones.begin();
    cones.end();
    expect(cones.object.children.every((child) => !(child as Mesh).visible)).toBe(true);
    expect(mesh).toBeInstanceOf(Mesh);
    cones.dispose();
  });
});
