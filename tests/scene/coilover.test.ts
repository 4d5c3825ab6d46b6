import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coiloverShape, springLength } from '../../src/scene/geometry/coiloverShape.ts';
import { createSpring, type Spring, stretchSpring } from '../../src/scene/geometry/spring.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const MODELS = [
  ...SHIPPED.map((name) => ({ name, model: shipped(name) })),
  { name: 'full', model: FULL_MODEL },
];

const RING = 9;

function ends({ geometry }: Spring): [number, number] {
  const position = geometry.getAttribute('position');
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < position.count; i += 1) {
    low = Math.min(low, position.getZ(i));
    high = Math.max(high, position.getZ(i));
  }
  return [low, high];
}

describe.each(MODELS)('the spring of $name', ({ model }) => {
  const shape = coiloverShape(model);
  const { meanRadius, wire, coils } = shape.spring;

  it('fills the damper from perch to seat at any length it reaches', () => {
    const spring = createSpring(meanRadius, wire, coils);
    const lengths = fc.double({ min: shape.least, max: shape.greatest, noNaN: true });
    fc.assert(
      fc.property(lengths, (damperLength) => {
        stretchSpring(spring, springLength(shape, damperLength));
        const [low, high] = ends(spring);
        // The closed coils climb a wire a turn: their slope takes a hundredth off the wire's half height.
        expect(Math.abs(low)).toBeLessThan(0.02);
        expect(Math.abs(shape.perch + high + shape.seat - damperLength)).toBeLessThan(0.02);
      }),
      { numRuns: 20 },
    );
  });

  it('keeps its wire, its coil and its buffers while it is compressed', () => {
    const spring = createSpring(meanRadius, wire, coils);
    const position = spring.geometry.getAttribute('position');
    const { array } = position;
    for (const damperLength of [shape.least, shape.greatest]) {
      stretchSpring(spring, springLength(shape, damperLength));
      for (let ring = 0; ring < position.count; ring += RING) {
        const half = ring + (RING - 1) / 2;
        const across = Math.hypot(
          position.getX(ring) - position.getX(half),
          position.getY(ring) - position.getY(half),
          position.getZ(ring) - position.getZ(half),
        );
        expect(across).toBeCloseTo(wire, 3);
        const out = Math.hypot(position.getX(ring), position.getY(ring));
        expect(out).toBeCloseTo(meanRadius + wire / 2, 3);
      }
    }
    expect(spring.geometry.getAttribute('position').array).toBe(array);
  });

  it('is not wound tighter than solid at the least length, and is as wide as the model says', () => {
    expect(springLength(shape, shape.least)).toBeGreaterThan(
      createSpring(meanRadius, wire, coils).solidLength,
    );
    expect(2 * meanRadius + wire).toBeCloseTo(shape.diameter, 9);
    expect(shape.foot).toBeLessThan(shape.perch);
    expect(shape.perch).toBeLessThan(shape.head);
    expect(shape.head).toBeLessThan(shape.least);
  });
});
