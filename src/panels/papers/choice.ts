/** What is chosen on the sheet of papers, kept while the page lives. */
import { createStore } from 'zustand/vanilla';
import type { PaperSize } from '../../paper/paperSize.ts';

export interface PaperChoice {
  /** Key of the paper. */
  readonly key: string;
  readonly paper: PaperSize;
  /** As a date field has it, or empty: then there is a place to write it. */
  readonly date: string;
  /** Shown at its full size instead of as wide as there is room. */
  readonly isFullSize: boolean;
}

/** Where Letter is the paper in every printer, by the language's country. */
const LETTER = /-(US|CA|MX|PH|CL|CO|VE)\b/;

function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export const paperChoice = createStore<PaperChoice>(() => ({
  key: 'set-up',
  paper: LETTER.test(navigator.language) ? 'letter' : 'a4',
  date: today(),
  isFullSize: false,
}));
