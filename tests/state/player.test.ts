import { describe, expect, it } from 'vitest';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { cycleAt, phaseAt, runPlayer } from '../../src/state/player.ts';
import { FULL_MODEL } from '../support/full-model.ts';

const STEP = 1000 / 60;

/** A bench with a player on a clock of its own: `run(n)` plays n frames. */
function playing(isCalm = false) {
  const documentStore = createDocument(FULL_MODEL, 'test');
  const inputs = createInputs(documentStore);
  let next: ((time: number) => void) | null = null;
  let time = 1000;
  const leave = runPlayer(documentStore, inputs, {
    request: (run) => {
      next = run;
    },
    isCalm: () => isCalm,
  });
  const run = (count: number): { travel: number; rack: number }[] =>
    Array.from({ length: count }, () => {
      time += STEP;
      const step = next;
      next = null;
      step?.(time);
      const { travel, rack } = inputs.getState();
      return { travel, rack };
    });
  return { inputs, run, leave, isAsked: () => next !== null };
}

describe('a cycle', () => {
  it('goes on from where the bench stands', () => {
    const range = [-105, 120] as const;
    for (const value of [-105, -30, 0, 77, 120]) {
      expect(cycleAt(phaseAt(value, range), range)).toBeCloseTo(value, 9);
    }
    expect(phaseAt(3, [0, 0])).toBe(0);
  });
});

describe('the player', () => {
  it('sweeps the whole travel at the present rack, smoothly', () => {
    const { inputs, run } = playing();
    inputs.move(0, 20);
    inputs.play('bump');
    const way = run(60 * 9);
    const travels = way.map((place) => place.travel);
    expect(Math.max(...travels)).toBeCloseTo(FULL_MODEL.travel.bump, 0);
    expect(Math.min(...travels)).toBeCloseTo(-FULL_MODEL.travel.droop, 0);
    expect(new Set(way.map((place) => place.rack))).toEqual(new Set([20]));
    const steps = travels.slice(1).map((travel, i) => Math.abs(travel - travels[i]!));
    expect(Math.max(...steps)).toBeLessThan(5);
  });

  it('sweeps lock to lock at the present travel', () => {
    const { inputs, run } = playing();
    inputs.move(-40, 0);
    inputs.play('lock');
    const way = run(60 * 6);
    const [least, most] = FULL_MODEL.steering?.limit ?? [0, 0];
    expect(Math.max(...way.map((place) => place.rack))).toBeCloseTo(most, 0);
    expect(Math.min(...way.map((place) => place.rack))).toBeCloseTo(least, 0);
    expect(new Set(way.map((place) => place.travel))).toEqual(new Set([-40]));
  });

  it('covers the map when both run', () => {
    const { inputs, run } = playing();
    inputs.play('both');
    const [least, most] = FULL_MODEL.steering?.limit ?? [0, 0];
    const { bump, droop } = FULL_MODEL.travel;
    const cells = new Set(
      run(60 * 240).map(({ travel, rack }) => {
        const column = Math.min(5, Math.floor((6 * (rack - least)) / (most - least)));
        const row = Math.min(5, Math.floor((6 * (travel + droop)) / (bump + droop)));
        return `${column},${row}`;
      }),
    );
    expect(cells.size).toBe(36);
  });

  it('stops when a hand moves the bench, and asks for no more frames', () => {
    const { inputs, run, isAsked } = playing();
    inputs.play('bump');
    run(10);
    inputs.setRack(11);
    expect(inputs.getState().playing).toBeNull();
    const { travel } = inputs.getState();
    expect(run(5).at(-1)).toEqual({ travel, rack: 11 });
    expect(isAsked()).toBe(false);
  });

  it('goes slower for people who ask for less motion', () => {
    const brisk = playing();
    const calm = playing(true);
    brisk.inputs.play('bump');
    calm.inputs.play('bump');
    const start = brisk.inputs.getState().travel;
    const far = Math.abs(brisk.run(20).at(-1)!.travel - start);
    const near = Math.abs(calm.run(20).at(-1)!.travel - start);
    expect(near).toBeGreaterThan(0);
    expect(near).toBeLessThan(far / 2);
  });

  it('leaves the bench alone after it was ended', () => {
    const { inputs, run, leave } = playing();
    inputs.play('bump');
    leave();
    const { travel } = inputs.getState();
    expect(run(5).at(-1)?.travel).toBe(travel);
  });
});
