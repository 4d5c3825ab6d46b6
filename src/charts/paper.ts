/** A canvas sized to its element and the screen's pixels, and the page's colours to draw with. */
import { DESIGN_COLOURS, type Mark } from '../state/marks.ts';
import type { Theme } from '../state/view.ts';
import { zoomOf } from './zoom.ts';

export interface Inks {
  readonly paper: string;
  readonly paperDeep: string;
  readonly card: string;
  readonly line: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly accent: string;
  readonly touch: string;
  readonly held: string;
  readonly font: string;
}

/** The colours and the font of the theme in force. */
export function readInks(element: Element): Inks {
  const style = getComputedStyle(element);
  const of = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    paper: of('paper'),
    paperDeep: of('paper-deep'),
    card: of('card-solid'),
    line: of('line'),
    ink: of('ink'),
    inkSoft: of('ink-soft'),
    accent: of('accent'),
    touch: of('touch'),
    held: of('held'),
    font: of('font') || 'sans-serif',
  };
}

/** What a design's curve is drawn in. */
export function inkOf({ tone }: Mark, inks: Inks, theme: Theme): string {
  return tone === 'accent' || tone === 'held' ? inks[tone] : DESIGN_COLOURS[theme][tone];
}

/**
 * Makes the canvas as fine as the screen and clears it; drawing is in CSS pixels. Null while it has no size. `zoom` is how
 * much larger the page draws it: to ask is to have the page laid out, so who draws in frames asks when sizes change.
 */
export function freshPaper(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
  zoom: number = zoomOf(canvas),
): { readonly context: CanvasRenderingContext2D; readonly dot: number } | null {
  const context = canvas.getContext('2d');
  if (context === null || width < 1 || height < 1) return null;
  const dot = Math.min(3, (globalThis.devicePixelRatio || 1) * zoom);
  const wide = Math.round(width * dot);
  const high = Math.round(height * dot);
  if (canvas.width !== wide || canvas.height !== high) {
    canvas.width = wide;
    canvas.height = high;
  }
  context.setTransform(dot, 0, 0, dot, 0, 0);
  context.clearRect(0, 0, width, height);
  return { context, dot };
}
