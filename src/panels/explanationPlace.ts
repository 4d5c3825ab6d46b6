/** Where the words of an explanation stand: off the figure they explain, off the drawing they light, off other panels. */
import type { Box } from '../state/litBox.ts';

/** Something on the page, and how much is lost where words cover it. */
export interface Kept {
  readonly box: Box;
  readonly worth: number;
}

export interface Room {
  readonly width: number;
  readonly height: number;
  /** Panel the name stands in, and the name. */
  readonly panel: Box;
  readonly name: Box;
  readonly kept: readonly Kept[];
}

const MARGIN = 10;

function overlap(a: Box, b: Box): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > 0 && high > 0 ? wide * high : 0;
}

/** The place for words of this size: beside the panel and level with the name, or the nearest such place that covers less. */
export function explanationPlace(
  width: number,
  height: number,
  { width: page, height: deep, panel, name, kept }: Room,
): { readonly left: number; readonly top: number } {
  const inside = (at: number, most: number): number => Math.max(MARGIN, Math.min(at, most));
  const lefts = [panel.left - width - MARGIN, panel.left, panel.right + MARGIN, MARGIN];
  const steps = Array.from({ length: 9 }, (_, i) => MARGIN + (i * (deep - height)) / 8);
  const level = name.top - 6;
  steps.sort((a, b) => Math.abs(a - level) - Math.abs(b - level));
  const tops = [level, panel.top - height - MARGIN, name.bottom + MARGIN, ...steps];
  let best = { left: MARGIN, top: MARGIN };
  let least = Number.POSITIVE_INFINITY;
  for (const wantedLeft of lefts) {
    for (const wantedTop of tops) {
      const left = inside(wantedLeft, page - width - MARGIN);
      const top = inside(wantedTop, deep - height - MARGIN);
      const box = { left, top, right: left + width, bottom: top + height };
      const lost = kept.reduce((sum, one) => sum + one.worth * overlap(box, one.box), 0);
      if (lost >= least) continue;
      least = lost;
      best = { left, top };
    }
  }
  return best;
}
