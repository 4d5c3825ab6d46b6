import { describe, expect, it } from 'vitest';
import type { Vector3 } from '../../solver/index.ts';
import { hardPoints, pointAt, withPointAt } from '../../src/state/points.ts';
import { FULL_MODEL } from '../support/full-model.ts';

/** Keys whose three numbers are directions or turns, not places. */
const DIRECTIONS = /(studAxis|housingAxis|slot|direction|innerAxis|rotation)$/;

/** Every [x, y, z] of a value by its path. */
function triples(value: unknown, path: string[] = []): string[] {
  if (typeof value !== 'object' || value === null) return [];
  const isTriple =
    Array.isArray(value) && value.length === 3 && value.every((n) => typeof n === 'number');
  if (isTriple) return [path.join('.')];
  return Object.entries(value).flatMap(([key, inner]) => triples(inner, [...path, key]));
}

describe('hardPoints', () => {
  const points = hardPoints(FULL_MODEL);

  it('lists every place of the file that is a point, and no direction', () => {
    const wanted = triples(FULL_MODEL).filter((path) => !DIRECTIONS.test(path));
    expect(points.map((point) => point.path).sort()).toEqual(wanted.sort());
  });

  it('names each point once', () => {
    expect(new Set(points.map((point) => point.label)).size).toBe(points.length);
  });

  it.each(points)('moves $path alone, and back', (point) => {
    const before = point.get(FULL_MODEL);
    const there: Vector3 = [before[0] + 1, before[1] - 2, before[2] + 3];
    const moved = point.set(FULL_MODEL, there);
    expect(point.get(moved)).toEqual(there);
    for (const other of points) {
      if (other !== point) expect(other.get(moved)).toBe(other.get(FULL_MODEL));
    }
    expect(point.set(moved, before)).toEqual(FULL_MODEL);
  });

  it('keeps the very model when nothing moves, and refuses a place that is not there', () => {
    const face = FULL_MODEL.hub.face;
    expect(withPointAt(FULL_MODEL, 'hub.face', [...face])).toBe(FULL_MODEL);
    expect(pointAt(FULL_MODEL, 'hub.nose')).toBeNull();
    expect(() => withPointAt(FULL_MODEL, 'hub.nose', [0, 0, 0])).toThrow('hub.nose');
  });
});
