/** The work on maps, its turns taken by hand: the newest request wins, the coarse map comes first. */

import { describe, expect, test } from 'vitest';
import { createGapField } from '../../solver/clearance/gapField.ts';
import { assemble, type Model } from '../../solver/index.ts';
import { createLockMap, mapInto } from '../../solver/map.ts';
import { withinStops } from '../../solver/worst.ts';
import { createMapRunner, type MapRequest } from '../../src/worker/mapJob.ts';
import { byHand } from '../support/byHand.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-factory');
const OTHER: Model = { ...MODEL, wheel: { ...MODEL.wheel, offset: 20 } };

function request(number: number, model: Model, more: Partial<MapRequest> = {}): MapRequest {
  return {
    number,
    owner: 'present',
    model,
    kind: 'map',
    pair: 'tieRod/wheel',
    meshes: new Map(),
    travel: [-105, 105],
    rack: [-72, 72],
    spare: [],
    ...more,
  };
}

describe('createMapRunner', () => {
  test('answers with a coarse map, then with the full one, as the solver fills them', () => {
    const { runner, answers, turn } = byHand(createMapRunner, 3);
    runner.ask(request(1, MODEL));
    while (turn());
    expect(answers.map(({ number, isFull }) => [number, isFull])).toEqual([
      [1, false],
      [1, true],
    ]);
    const full = createLockMap(81, 61);
    const corner = assemble(MODEL);
    mapInto(corner, createGapField(corner, 'tieRod/wheel')!, full, [-105, 105], [-72, 72]);
    expect(answers[1]!.map).toEqual(full);
    expect(answers[0]!.map.gap).toHaveLength(21 * 16);
    const { travel, gap } = answers[1]!.worst!;
    const [least, most] = withinStops(MODEL, [-105, 105]);
    expect(travel).toBeGreaterThanOrEqual(least);
    expect(travel).toBeLessThanOrEqual(most);
    const inside = [...full.gap].filter((_, node) => {
      const row = full.travels[Math.floor(node / 61)]!;
      return row >= least && row <= most;
    });
    expect(gap).toBeLessThanOrEqual(Math.min(...inside) + 1e-9);
  });

  test('drops a full map under way when something newer is asked', () => {
    const { runner, answers, turn } = byHand(createMapRunner, 3);
    runner.ask(request(1, MODEL));
    for (let i = 0; i < 5; i += 1) turn();
    expect(answers.map(({ number, isFull }) => [number, isFull])).toEqual([[1, false]]);
    runner.ask(request(2, OTHER));
    while (turn());
    expect(answers.map(({ number, isFull }) => [number, isFull])).toEqual([
      [1, false],
      [2, false],
      [2, true],
    ]);
  });

  test('in a stream of requests every turn still answers one', () => {
    const { runner, answers, turn } = byHand(createMapRunner, 3);
    for (let number = 1; number <= 6; number += 1) {
      runner.ask(request(number, number % 2 === 0 ? MODEL : OTHER));
      turn();
    }
    expect(answers.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  test('the held design is mapped beside the present one, in full only', () => {
    const { runner, answers, turn } = byHand(createMapRunner, 3);
    runner.ask(request(1, OTHER, { owner: 'held' }));
    runner.ask(request(2, MODEL));
    while (turn());
    expect(answers.map(({ owner, isFull }) => [owner, isFull])).toEqual([
      ['present', false],
      ['present', true],
      ['held', true],
    ]);
  });

  test('fills the maps it is given back', () => {
    const { runner, answers, turn } = byHand(createMapRunner, 3);
    const spare = [createLockMap(81, 61), createLockMap(21, 16)];
    runner.ask(request(1, MODEL, { spare }));
    while (turn());
    expect(answers[0]!.map).toBe(spare[1]);
    expect(answers[1]!.map).toBe(spare[0]);
  });

  test('a model without steering has one column', () => {
    const { runner, answers, turn } = byHand(createMapRunner, 3);
    runner.ask(request(1, MODEL, { rack: [0, 0] }));
    while (turn());
    expect(answers.map(({ map }) => map.racks.length)).toEqual([1, 1]);
  });
});
