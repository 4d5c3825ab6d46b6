/** Dials: where a hand lets them stand, and where a key takes them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caught, type DialSource, shortWay, stepped } from '../../src/panels/align/dial.ts';

const NO_KEYS = { shiftKey: false, altKey: false };

function cam(marks: number | null, angle: number): DialSource {
  return {
    label: 'cam',
    read: () => angle,
    write: () => undefined,
    least: -90,
    most: 90,
    perTurn: 360,
    divisions: marks,
    step: 1,
    fine: 0.1,
    coarse: 30,
    stops: '',
    figure: String,
    unit: '°',
    words: String,
    effect: String,
    enter: () => ({ ok: true, value: 0 }),
  };
}

const angles = fc.double({ min: -90, max: 90, noNaN: true });
const marks = fc.integer({ min: 8, max: 72 });

describe('a hand on a dial', () => {
  it('is drawn onto a mark from near it, stands free between marks, and wherever it asks to', () => {
    fc.assert(
      fc.property(angles, marks, (angle, count) => {
        const source = cam(count, 0);
        const division = 360 / count;
        const off = Math.abs(shortWay((angle / division) * 360)) / 360;
        const stands = caught(angle, source, false);
        const isOnMark = Math.abs(shortWay((stands / division) * 360)) < 1e-3;
        if (off < 0.23 && Math.abs(Math.round(angle / division) * division) <= 90) {
          expect(isOnMark).toBe(true);
          expect(Math.abs(stands - angle)).toBeLessThanOrEqual(0.24 * division);
        }
        if (off > 0.25) expect(Math.abs(stands - angle)).toBeLessThanOrEqual(0.0500001);
        expect(Math.abs(caught(angle, source, true) - angle)).toBeLessThanOrEqual(0.0500001);
      }),
      { seed: 21, numRuns: 400 },
    );
  });

  it('does not leave the working range', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e3, max: 1e3, noNaN: true }), marks, (angle, count) => {
        expect(Math.abs(caught(angle, cam(count, 0), false))).toBeLessThanOrEqual(90);
      }),
      { seed: 22 },
    );
  });
});

describe('a key on a dial', () => {
  it('goes to the very next mark in its sense, or to the end', () => {
    fc.assert(
      fc.property(angles, marks, fc.constantFrom(1, -1), (angle, count, sense) => {
        const division = 360 / count;
        const next = stepped(cam(count, angle), sense, NO_KEYS);
        expect(Math.abs(next)).toBeLessThanOrEqual(90);
        if (Math.abs(next) === 90) return;
        expect(Math.abs(next / division - Math.round(next / division))).toBeLessThan(1e-4);
        expect(sense * (next - angle)).toBeGreaterThan(-1e-4);
        expect(sense * (next - angle)).toBeLessThanOrEqual(division + 1e-4);
      }),
      { seed: 23, numRuns: 400 },
    );
  });

  it('steps a degree without marks, further with Shift, finely with Alt', () => {
    expect(stepped(cam(null, 10), 1, NO_KEYS)).toBe(11);
    expect(stepped(cam(null, 10.4), -1, NO_KEYS)).toBe(10);
    expect(stepped(cam(null, 10), 1, { shiftKey: true, altKey: false })).toBe(40);
    expect(stepped(cam(24, 10), -1, { shiftKey: false, altKey: true })).toBe(9.9);
  });
});
