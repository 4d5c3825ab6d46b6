/** The maps on show: what is asked for, what is shown of the answers, with a service driven by hand. */
import { describe, expect, test } from 'vitest';
import { createLockMap } from '../../solver/map.ts';
import { createDocument } from '../../src/state/document.ts';
import { createLockMaps } from '../../src/state/map.ts';
import { meshes } from '../../src/state/meshes.ts';
import type { MapAnswer, MapRequest } from '../../src/worker/mapJob.ts';
import { shipped } from '../support/models.ts';

function bench() {
  const documentStore = createDocument(shipped('half-ton-factory'), 'half-ton-factory.json');
  const asked: MapRequest[] = [];
  let starts = 0;
  let answer: (answer: MapAnswer) => void = () => undefined;
  const maps = createLockMaps(documentStore, meshes, (take) => {
    starts += 1;
    answer = take;
    return {
      ask: (request) => {
        if (request.kind === 'map') asked.push(request);
      },
    };
  });
  const give = (request: MapRequest, isFull: boolean): MapAnswer => {
    const { number, owner } = request;
    const made = {
      number,
      owner,
      isFull,
      map: createLockMap(2, 2),
      worst: null,
      pairs: [],
      wanted: 6,
    };
    answer(made);
    return made;
  };
  const offset = (mm: number): void => {
    documentStore.edit((model) => ({ ...model, wheel: { ...model.wheel, offset: mm } }));
  };
  return { documentStore, maps, asked, give, offset, starts: () => starts };
}

describe('createLockMaps', () => {
  test('starts nothing until somebody watches, and asks once however many do', () => {
    const { maps, asked, starts } = bench();
    expect(starts()).toBe(0);
    const leave = [maps.watch(), maps.watch()];
    expect([starts(), asked.length]).toEqual([1, 1]);
    for (const exit of leave) exit();
  });

  test('is pending until the full map of the newest model is there', () => {
    const { maps, asked, give, offset } = bench();
    maps.watch();
    give(asked[0]!, false);
    expect(maps.getState()).toMatchObject({ isPending: true, present: { isFull: false } });
    give(asked[0]!, true);
    expect(maps.getState().isPending).toBe(false);
    offset(30);
    expect(maps.getState().isPending).toBe(true);
    give(asked[1]!, true);
    expect(maps.getState().isPending).toBe(false);
    expect(maps.getState().present!.model.wheel.offset).toBe(30);
  });

  test('shows an overtaken answer while it is news, never after a newer one', () => {
    const { maps, asked, give, offset } = bench();
    maps.watch();
    offset(30);
    offset(31);
    give(asked[1]!, false);
    expect(maps.getState().present!.model.wheel.offset).toBe(30);
    expect(maps.getState().isPending).toBe(true);
    give(asked[2]!, true);
    give(asked[1]!, true);
    give(asked[0]!, true);
    expect(maps.getState().present!.model.wheel.offset).toBe(31);
    expect(maps.getState().isPending).toBe(false);
  });

  test('another pair is another map, and answers for the pair before are not shown', () => {
    const { maps, asked, give } = bench();
    maps.watch();
    maps.choose('tieRod/tyre');
    expect(asked.map(({ pair }) => pair)).toEqual(['tieRod/wheel', 'tieRod/tyre']);
    give(asked[0]!, true);
    expect(maps.getState().present).toBeNull();
    give(asked[1]!, true);
    expect(maps.getState().present!.pair).toBe('tieRod/tyre');
  });

  test('the held design is mapped over the present range, and let go', () => {
    const { documentStore, maps, asked, give } = bench();
    maps.watch();
    documentStore.hold();
    documentStore.edit((model) => ({ ...model, travel: { ...model.travel, bump: 60 } }));
    const held = asked.filter(({ owner }) => owner === 'held');
    expect(held.map(({ travel }) => travel)).toEqual([
      [-105, 105],
      [-105, 60],
    ]);
    give(held[1]!, true);
    expect(maps.getState().held).not.toBeNull();
    documentStore.release();
    expect(maps.getState().held).toBeNull();
    give(held[1]!, true);
    expect(maps.getState().held).toBeNull();
  });

  test('gives maps no longer shown back to be filled again', () => {
    const { maps, asked, give, offset } = bench();
    maps.watch();
    const coarse = give(asked[0]!, false);
    give(asked[0]!, true);
    offset(30);
    expect(asked[1]!.spare).toEqual([coarse.map]);
    offset(31);
    expect(asked[2]!.spare).toEqual([]);
  });

  test('asks for nothing while nobody watches, and catches up afterwards', () => {
    const { maps, asked, offset } = bench();
    maps.watch()();
    offset(30);
    expect(asked).toHaveLength(1);
    maps.watch();
    expect(asked[1]!.model.wheel.offset).toBe(30);
  });
});
