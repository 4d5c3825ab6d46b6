import { describe, expect, it } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  createRodGap,
  measureInto,
  rodGapInto,
  solve,
} from '../../solver/index.ts';
import { limitsOf } from '../../solver/measures/limits.ts';
import { gapPlace, gapState, gapVerdict } from '../../src/panels/gap.ts';
import { limitLine, limitName, outsideLine, roomLeft } from '../../src/panels/limitWords.ts';
import { figureStyle } from '../../src/words/figures.ts';
import { FULL_MODEL } from '../support/full-model.ts';

describe('the gap in words', () => {
  it('is clear, near under the wanted gap, and touch from 0 down, with its depth', () => {
    expect([6, 5.9, 0.1, 0, -3].map((gap) => gapState(gap, 6))).toEqual([
      'clear',
      'near',
      'near',
      'touch',
      'touch',
    ]);
    expect(gapVerdict(-3.14, 6, 'mm')).toBe('touch: 3.1 mm deep');
    expect(gapVerdict(-25.4, 6, 'inch')).toBe('touch: 1.00 in deep');
    expect(gapVerdict(2, 6, 'mm')).toBe('near: under the wanted gap');
    expect(gapVerdict(7, 6, 'mm')).toBe('clear');
  });

  it('is at a lip on the barrel’s first or last stretch, whichever end is drawn first', () => {
    const corner = assemble(FULL_MODEL);
    const pose = createPose();
    solve(corner, pose, 0, 0);
    measureInto(corner, pose, createMeasures());
    const gap = createRodGap(corner, 'wheel');
    rodGapInto(gap, pose);
    const at = (s: number, radius: number, line: readonly number[], fromOuter = 84) =>
      gapPlace(
        {
          ...gap,
          place: 'barrel',
          sections: [{ name: 'barrel', line: Float64Array.from(line), half: 3, solid: false }],
          sectionPoint: [s, radius],
          fromOuter,
        },
        'mm',
      );
    const line = [-120, 230, -110, 215, 0, 200, 110, 215, 120, 230];
    expect(at(-112, 218, line)).toBe('at the inner lip, 84 mm from the rod end');
    expect(at(-110, 215, line)).toBe('at the inner lip, 84 mm from the rod end');
    expect(at(-100, 214, line)).toBe('in the barrel, 84 mm from the rod end');
    expect(at(112, 218, line)).toBe('at the outer lip, 84 mm from the rod end');
    const turned = [120, 230, 110, 215, 0, 200, -110, 215, -120, 230];
    expect(at(-112, 218, turned)).toBe('at the inner lip, 84 mm from the rod end');
    expect(at(-112, 222, line, 0)).toBe('at the inner lip, at the rod end');
  });
});

describe('limits in words', () => {
  const degree = figureStyle('degree', 'mm');
  const mm = figureStyle('millimetre', 'mm');

  it('say what is left before the nearest bound, or what is passed', () => {
    const cone = [{ name: 'lowerArm.ballJointLimit', of: 'lowerBallJoint', most: 26 }] as const;
    expect(limitLine(cone, 12.5, degree)).toBe('13.50° left of 26.00°');
    expect(limitLine(cone, 27, degree)).toBe(
      'Outside its limit of 26.00°: lowerArm.ballJointLimit',
    );
    const damper = [
      { name: 'coilover.minLength', of: 'damperLength', least: 360 },
      { name: 'coilover.maxLength', of: 'damperLength', most: 512 },
    ] as const;
    expect(roomLeft(damper, 500)).toBe(12);
    expect(roomLeft(damper, 370)).toBe(10);
    expect(limitLine(damper, 500, mm)).toBe('12.0 mm left (360.0 mm to 512.0 mm)');
    expect(limitLine(damper, 350, mm)).toContain('coilover.minLength');
    expect(limitLine([], 1, mm)).toBe('');
  });

  it('has words for every limit a model can state', () => {
    const stated = limitsOf({
      ...FULL_MODEL,
      strap: { top: [0, 0, 0], bottom: [0, 0, 1], length: 1 },
    });
    expect(stated.length).toBeGreaterThan(10);
    for (const { name } of stated) expect(limitName(name), name).not.toContain('.');
    expect(outsideLine(['stops.bump'])).toBe('Outside: past the bump stop');
    expect(outsideLine(stated.map(({ name }) => name))).toContain('more, marked in the readings');
    expect(outsideLine([])).toBe('');
  });
});
