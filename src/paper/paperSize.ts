/** The papers that are printed on. */

export type PaperSize = 'a4' | 'letter';

/** Width and height, mm: ISO 216, and ANSI/ASME Y14.1 size A. */
export const PAPER_SIZES: Readonly<Record<PaperSize, readonly [number, number]>> = {
  a4: [210, 297],
  letter: [215.9, 279.4],
};
