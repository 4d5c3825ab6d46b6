import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnitKind } from '../../solver/index.ts';
import type { LengthUnit } from '../../src/state/view.ts';
import { enteredLength } from '../../src/words/entry.ts';
import {
  figureDifference,
  figureNumber,
  figureSteps,
  figureStyle,
} from '../../src/words/figures.ts';

function shown(kind: UnitKind, value: number, unit: LengthUnit): string {
  const style = figureStyle(kind, unit);
  return figureNumber(figureSteps(value, style), style) + style.unit;
}

describe('figures', () => {
  it.each([
    ['degree', -1.2345, 'mm', '−1.23°'],
    ['degree', -0.004, 'mm', '0.00°'],
    ['millimetre', 25.4, 'mm', '25.4 mm'],
    ['millimetre', 12.7, 'inch', '0.50 in'],
    ['millimetre', -39.6875, 'sixteenth', '−1 9/16 in'],
    ['millimetre', 0.5, 'sixteenth', '0 in'],
    ['distance', 12345, 'mm', '12.35 m'],
    ['distance', 12192, 'inch', '40.0 ft'],
    // Bump steer of 0.01° per mm: 1° per 100 mm, 0.254° per inch.
    ['degreePerMm', 0.01, 'mm', '1.00°/100 mm'],
    ['degreePerMm', 0.01, 'inch', '0.254°/in'],
    ['degreePerMm', 0.01, 'sixteenth', '0.254°/in'],
    // 1 lbf/in is 0.175127 N/mm.
    ['newtonPerMm', 17.5127, 'inch', '100 lbf/in'],
    ['newton', 4448.2216, 'inch', '1000 lbf'],
    ['percent', 14.96, 'mm', '15.0 %'],
  ] as const)('%s of %d in %s reads %s', (kind, value, unit, text) => {
    expect(shown(kind, value, unit)).toBe(text);
  });

  it('sign their differences', () => {
    const degree = figureStyle('degree', 'mm');
    expect(figureDifference(figureSteps(0.5, degree), degree)).toBe('+0.50');
    expect(figureDifference(figureSteps(-0.5, degree), degree)).toBe('−0.50');
    expect(figureDifference(figureSteps(0.001, degree), degree)).toBe('0.00');
    const inch = figureStyle('millimetre', 'sixteenth');
    expect(figureDifference(figureSteps(25.4, inch), inch)).toBe('+1');
  });
});

describe('a typed length', () => {
  it('reads back what a figure shows, to the step shown', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -500, max: 500 }),
        fc.constantFrom('mm' as const, 'inch' as const, 'sixteenth' as const),
        (mm, unit) => {
          const style = figureStyle('millimetre', unit);
          const read = enteredLength(shown('millimetre', mm, unit), 'mm');
          return read.ok && Math.abs(read.value - mm) <= 0.5 / style.steps / style.scale + 1e-6;
        },
      ),
    );
  });
});
