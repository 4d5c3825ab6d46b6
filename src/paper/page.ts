/** The frame of every page, and the document they make: paper size, name, date, unit, page numbers. */
import type { LengthUnit } from '../words/lengthUnit.ts';
import { type Block, pagesOf } from './block.ts';
import { type Markup, markup, type Piece, plainText } from './markup.ts';
import { PAPER_SIZES, type PaperSize } from './paperSize.ts';
import type { PaperSettings, PaperSource } from './source.ts';
import { PAPER_STYLE } from './style.ts';

export const MARGIN = 12;
/** Taken by a page's head and foot. */
const HEAD_AND_FOOT = 28;

/** Height left for blocks on a page. */
export function roomOf(paper: PaperSize): number {
  return PAPER_SIZES[paper][1] - 2 * MARGIN - HEAD_AND_FOOT;
}

/** Width left for blocks on a page. */
export function widthOf(paper: PaperSize): number {
  return PAPER_SIZES[paper][0] - 2 * MARGIN;
}

const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = {
  mm: 'mm and degrees',
  inch: 'inches and degrees',
  sixteenth: 'inches to 1/16, degrees',
};

export interface Sheet {
  /** Part of a file's name. */
  readonly key: string;
  readonly title: string;
  readonly pages: readonly Markup[];
}

/** Longest name that a page's head shows. */
const LONGEST_NAME = 90;

function shortened(name: string): string {
  const characters = [...name];
  if (name === '') return 'Without a name';
  return characters.length <= LONGEST_NAME
    ? name
    : `${characters.slice(0, LONGEST_NAME).join('')}…`;
}

/** A sheet's blocks on as many pages as they need, each with its head and its foot. */
export function sheetPages(
  key: string,
  title: string,
  { model, settings }: PaperSource,
  blocks: readonly Block[],
): Sheet {
  const bodies = pagesOf(blocks, roomOf(settings.paper));
  const date = settings.date === '' ? markup`<span class="write">&#160;</span>` : settings.date;
  const pages = bodies.map(
    (body: Piece, at) => markup`<section class="page" data-sheet="${key}">
<header><h1>${title}</h1><dl><div><dt>Design</dt><dd>${shortened(model.name)}</dd></div><div><dt>Date</dt><dd>${date}</dd></div><div><dt>Units</dt><dd>${UNIT_WORDS[settings.unit]}</dd></div></dl></header>
<main>${body}</main>
<footer><span>Armscribe: kinematics of rigid parts; strength is not checked.</span><span>Page ${at + 1} of ${bodies.length}</span></footer>
</section>
`,
  );
  return { key, title, pages };
}

/** Style of pages of a size, for a document of their own. */
export function paperStyle({ paper }: Pick<PaperSettings, 'paper'>): string {
  const [width, height] = PAPER_SIZES[paper];
  // A hair less than the paper, so that rounding never makes an empty page after it.
  return `@page { size: ${width}mm ${height}mm; margin: 0; }
.page { width: ${width}mm; min-height: ${height - 0.5}mm; padding: ${MARGIN}mm; }
${PAPER_STYLE}`;
}

/** All pages of some sheets, without the document around them. */
export function paperBody(sheets: readonly Sheet[]): string {
  return sheets.flatMap(({ pages }) => pages.map(({ text }) => text)).join('');
}

/** Sheets as a whole HTML document that loads nothing and runs nothing. */
export function paperDocument(
  title: string,
  sheets: readonly Sheet[],
  settings: PaperSettings,
): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
<title>${plainText(title)}</title>
<style>
${paperStyle(settings)}</style>
</head>
<body>
${paperBody(sheets)}</body>
</html>
`;
}
