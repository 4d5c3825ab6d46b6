import { describe, expect, it } from 'vitest';
import {
  boxOfDraft,
  choiceOf,
  countWords,
  draftOf,
  namesakes,
  sidesOf,
  sizeWords,
  whereOf,
  withUp,
} from '../../src/panels/meshes/choice.ts';
import type { OfferedMesh } from '../../src/state/meshes.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { boxMesh } from '../support/meshShapes.ts';

const WHEEL = { centre: [10, 700, 20], radius: 380 } as const;

function offered(name: string, min = [0, 0, 0], max = [2, 1, 0.5]): OfferedMesh {
  const box = { min: min as [number, number, number], max: max as [number, number, number] };
  const reading = { ok: true, mesh: boxMesh(box.min, box.max), box, content: '0' } as const;
  return { name, bytes: new Uint8Array(), reading };
}

describe('what is asked of a mesh file', () => {
  it('is its unit, unless it is GLB: nothing is taken for granted', () => {
    const draft = draftOf(offered('front_left-guard.stl'), FULL_MODEL);
    expect(draft).toMatchObject({ name: 'front left guard', unit: null, up: 'z', forward: 'x' });
    expect(choiceOf(offered('guard.stl'), draft, WHEEL)).toBeNull();
    expect(draftOf(offered('guard.glb'), FULL_MODEL).unit).toBe('m');
  });

  it('keeps forward across up', () => {
    const draft = draftOf(offered('guard.stl'), FULL_MODEL);
    expect(withUp(draft, 'y')).toMatchObject({ up: 'y', forward: 'x' });
    expect(withUp(draft, '-x').forward).not.toMatch(/x/);
  });

  it('tells sizes as they will be in the vehicle', () => {
    const file = offered('guard.stl');
    const draft = { ...draftOf(file, FULL_MODEL), up: 'x', forward: 'y' } as const;
    const sides = sidesOf(boxOfDraft(file, draft, 'm'));
    expect(sizeWords(sides, 'mm')).toBe('1\u202f000 × 500 × 2\u202f000 mm');
    expect(sizeWords([25.4, 2.54, 254], 'inch')).toBe('1.0 × 0.10 × 10.0 in');
    expect(countWords(500556)).toBe('500\u202f556');
  });

  it('leaves near the wheel what is drawn there, and puts above it what is not', () => {
    const near = offered('guard.stl', [0, 600, 300], [100, 800, 340]);
    const draft = { ...draftOf(near, FULL_MODEL), unit: 'mm' } as const;
    expect(whereOf(draft, boxOfDraft(near, draft, 'mm'), WHEEL)).toBe('own');
    expect(choiceOf(near, draft, WHEEL)?.position).toEqual([0, 0, 0]);
    const far = offered('guard.stl', [5000, 0, 0], [5100, 200, 40]);
    const choice = choiceOf(far, { ...draft, name: 'guard' }, WHEEL);
    // The middle over the wheel's, the underside 60 mm above the tyre.
    expect(choice?.position).toEqual([10 - 5050, 700 - 100, 20 + 380 + 60]);
    expect(choiceOf(far, { ...draft, where: 'own' }, WHEEL)?.position).toEqual([0, 0, 0]);
  });

  it('offers to renew an obstacle whose file has the same name', () => {
    const file = offered('inner-wing.stl');
    expect(namesakes(file, FULL_MODEL)).toEqual(['inner wing']);
    expect(draftOf(file, FULL_MODEL)).toMatchObject({
      replaces: 'inner wing',
      name: 'inner wing 2',
    });
  });
});
