import fc from 'fast-check';
import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { bendBellows, createBellows, roundedFolds } from '../../src/scene/geometry/bellows.ts';
import { createStrap, hangStrap } from '../../src/scene/geometry/strap.ts';

const coordinate = fc.double({ min: -400, max: 400, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate);

describe('a boot', () => {
  const radii = roundedFolds(40, 18, 5, 9);
  const boot = createBellows(radii, 16);
  const row = boot.segments + 1;

  it('begins and ends on its mouths, square to them, however they stand', () => {
    const unit = point.filter(([x, y, z]) => Math.hypot(x, y, z) > 50);
    fc.assert(
      fc.property(point, point, unit, unit, (a, b, u, v) => {
        fc.pre(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) > 60);
        const [from, to] = [new Vector3(...u).normalize(), new Vector3(...v).normalize()];
        boot.mouths.set([...a, ...from.toArray(), ...b, ...to.toArray()]);
        bendBellows(boot);
        const position = boot.geometry.getAttribute('position');
        for (const [ring, centre, axis] of [
          [0, new Vector3(...a), from],
          [radii.length - 1, new Vector3(...b), to],
        ] as const) {
          for (let j = 0; j < row; j += 1) {
            const spoke = new Vector3().fromBufferAttribute(position, ring * row + j).sub(centre);
            expect(spoke.length()).toBeCloseTo(radii[ring]!, 2);
            expect(Math.abs(spoke.dot(axis))).toBeLessThan(0.01);
          }
        }
      }),
    );
  });

  it('has normals square to its folds', () => {
    boot.mouths.set([0, 0, 0, 0, 1, 0, 0, 120, 0, 0, 1, 0]);
    bendBellows(boot);
    const { position, normal } = boot.geometry.attributes;
    for (let i = row; i < position!.count - row; i += 1) {
      const fold = new Vector3()
        .fromBufferAttribute(position!, i + row)
        .sub(new Vector3().fromBufferAttribute(position!, i - row));
      const up = new Vector3().fromBufferAttribute(normal!, i);
      expect(Math.abs(fold.normalize().dot(up.normalize()))).toBeLessThan(1e-4);
    }
  });

  it('faces outwards', () => {
    boot.mouths.set([0, 0, 0, 0, 1, 0, 0, 120, 0, 0, 1, 0]);
    bendBellows(boot);
    const position = boot.geometry.getAttribute('position');
    const index = boot.geometry.getIndex()!;
    const corner = (i: number): Vector3 =>
      new Vector3().fromBufferAttribute(position, index.getX(i));
    for (let i = 0; i < index.count; i += 3) {
      const [a, b, c] = [corner(i), corner(i + 1), corner(i + 2)];
      const normal = b.clone().sub(a).cross(c.clone().sub(a));
      expect(normal.dot(a.clone().add(b).add(c).setY(0))).toBeGreaterThan(0);
    }
  });
});

describe('a strap', () => {
  const strap = createStrap(420, new Vector3(-1, 0.2, 0));

  function drawnLength(): number {
    const position = strap.geometry.getAttribute('position');
    const middle = (i: number): Vector3 =>
      new Vector3()
        .fromBufferAttribute(position, 2 * i)
        .add(new Vector3().fromBufferAttribute(position, 2 * i + 1))
        .multiplyScalar(0.5);
    let length = 0;
    for (let i = 1; i < position.count / 2; i += 1) length += middle(i).distanceTo(middle(i - 1));
    return length;
  }

  it('keeps its length while it is slack', () => {
    for (const chord of [120, 250, 380, 415]) {
      hangStrap(strap, Float64Array.of(0, 500, 200, 0, 500 + 0.6 * chord, 200 - 0.8 * chord));
      expect(drawnLength() / 420).toBeCloseTo(1, 2);
    }
  });

  it('is straight when it is taut', () => {
    hangStrap(strap, Float64Array.of(0, 500, 200, 0, 500, -220));
    expect(drawnLength()).toBeCloseTo(420, 3);
  });
});
