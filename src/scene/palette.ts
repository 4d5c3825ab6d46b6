/** Colours of the stage by theme, as three reads them: the page's tokens, and what only a picture needs. */
import type { DesignTone } from '../state/marks.ts';
import type { Theme } from '../state/view.ts';

/** What a drawing or label means. */
export type Tone = PageTone | DesignTone;

/** Tones that every picture has. */
export type PageTone = 'ink' | 'soft' | 'accent' | 'near' | 'touch' | 'held' | 'paper';

export interface Palette {
  readonly background: string;
  readonly gridFine: string;
  readonly gridBold: string;
  /** How dark the shadows on the ground are, 0 to 1. */
  readonly shadow: number;
  readonly key: string;
  readonly sky: string;
  readonly floor: string;
  readonly keyStrength: number;
  readonly fillStrength: number;
  readonly surroundings: number;
  readonly tones: Readonly<Record<PageTone, string>>;
}

export const PALETTES: Readonly<Record<Theme, Palette>> = {
  light: {
    background: '#e6e8e4',
    gridFine: '#b4bab5',
    gridBold: '#7f8983',
    shadow: 0.22,
    key: '#fff8ee',
    sky: '#f4f8fb',
    floor: '#c9c6bd',
    keyStrength: 1.9,
    fillStrength: 0.95,
    surroundings: 0.8,
    tones: {
      ink: '#182126',
      soft: '#5a666b',
      accent: '#0a5f7d',
      near: '#b56a00',
      touch: '#c1320f',
      held: '#434b50',
      paper: '#f6f7f4',
    },
  },
  dark: {
    background: '#181d20',
    gridFine: '#323c41',
    gridBold: '#56646b',
    shadow: 0.45,
    key: '#fff3e2',
    sky: '#9fb4c0',
    floor: '#23282a',
    keyStrength: 1.9,
    fillStrength: 0.8,
    surroundings: 0.65,
    tones: {
      ink: '#eef2f1',
      soft: '#aab5b9',
      accent: '#6cc3dd',
      near: '#f2ae3d',
      touch: '#ff7a55',
      held: '#ccd4d7',
      paper: '#181d20',
    },
  },
};
