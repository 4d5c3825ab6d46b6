import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explanationPlace } from '../../src/panels/explanationPlace.ts';
import type { Box } from '../../src/state/litBox.ts';

const PAGE = { width: 1440, height: 900 };
const PANEL: Box = { left: 1130, top: 54, right: 1430, bottom: 760 };
const NAME: Box = { left: 1146, top: 320, right: 1200, bottom: 340 };
const SIZE = [300, 130] as const;

function meets(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function boxAt({ left, top }: { left: number; top: number }): Box {
  return { left, top, right: left + SIZE[0], bottom: top + SIZE[1] };
}

function placed(...boxes: readonly Box[]): Box {
  const kept = [PANEL, ...boxes].map((box) => ({ box, worth: 1 }));
  return boxAt(explanationPlace(...SIZE, { ...PAGE, panel: PANEL, name: NAME, kept }));
}

describe('an explanation', () => {
  it('stands beside its panel, level with its name, where nothing is in the way', () => {
    expect(placed()).toEqual(boxAt({ left: 820, top: 314 }));
  });

  it('gives way to a drawing beside it, by as little as will do', () => {
    const drawing = { left: 700, top: 250, right: 1100, bottom: 600 };
    const box = placed(drawing);
    expect(meets(box, drawing)).toBe(false);
    expect(box.left).toBe(820);
  });

  it('stays on the page, and off a drawing of up to half the page wherever it lies', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 700 }),
        fc.integer({ min: 44, max: 450 }),
        fc.integer({ min: 1, max: 700 }),
        fc.integer({ min: 1, max: 440 }),
        (left, top, width, height) => {
          const drawing = { left, top, right: left + width, bottom: top + height };
          const box = placed(drawing);
          expect(meets(box, drawing)).toBe(false);
          expect(meets(box, PANEL)).toBe(false);
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.top).toBeGreaterThanOrEqual(0);
          expect(box.right).toBeLessThanOrEqual(PAGE.width);
          expect(box.bottom).toBeLessThanOrEqual(PAGE.height);
        },
      ),
    );
  });
});
