import { describe, expect, it } from 'vitest';
import { wayOf } from '../../src/scene/handles/lock.ts';
import { snapped, snapStep } from '../../src/scene/handles/snap.ts';

describe('snapped', () => {
  it('rounds what moves to whole steps and keeps what stays', () => {
    expect(snapped([6.13, 772.2, -118.37], [0.4, 0, 1.2], 0.5)).toEqual([6.5, 772.2, -117]);
  });

  it('rounds to 1/32 inch where inches are shown, and ten times finer with a fine drag', () => {
    expect(snapStep('mm', false)).toBe(0.5);
    expect(snapStep('inch', false)).toBeCloseTo(25.4 / 32, 12);
    expect(snapStep('sixteenth', true)).toBeCloseTo(25.4 / 320, 12);
    const [x] = snapped([0, 0, 0], [10, 0, 0], 25.4 / 32);
    expect((x / 25.4) * 32).toBeCloseTo(13, 5);
  });
});

describe('wayOf', () => {
  const UP = [0, -1] as const;
  const SIDE = [1, 0] as const;

  it('decides nothing before the threshold', () => {
    expect(wayOf(3, 3, UP, SIDE, false)).toBe('undecided');
  });

  it('takes the dominant way, or both with the free key', () => {
    expect(wayOf(2, -9, UP, SIDE, false)).toBe('travel');
    expect(wayOf(9, 2, UP, SIDE, false)).toBe('steer');
    expect(wayOf(9, 2, UP, SIDE, true)).toBe('free');
  });

  it('takes the only way there is', () => {
    expect(wayOf(0, 9, null, SIDE, true)).toBe('steer');
    expect(wayOf(9, 0, UP, null, true)).toBe('travel');
    expect(wayOf(9, 9, null, null, false)).toBe('undecided');
  });
});
