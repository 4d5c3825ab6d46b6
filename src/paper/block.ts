/** Blocks of a sheet with the height each takes, and how they are laid on pages. Heights mm, reckoned on the safe side. */
import { Markup, markup, type Piece } from './markup.ts';

export interface Block {
  readonly height: number;
  readonly piece: Markup;
  /** True of a heading: it stays with what follows. */
  readonly isHead?: boolean;
}

/** Height of a line of text, and how many characters it holds at least. */
const LINE = 4.1;
const LINE_LENGTH = 104;
const ROW = 5.3;
/** A dense table's share of these. */
const DENSE = 0.83;

/** Lines that a text takes in a part of the page's width. */
export function linesOf(text: string, share = 1): number {
  return Math.max(1, Math.ceil(text.length / (LINE_LENGTH * share)));
}

export function heading(text: string): Block {
  return { height: 9.5, piece: markup`<h2>${text}</h2>`, isHead: true };
}

export function paragraph(text: string): Block {
  return { height: LINE * linesOf(text) + 1.6, piece: markup`<p>${text}</p>` };
}

export function list(items: readonly string[], isOrdered = false): Block {
  const lines = items.reduce((sum, item) => sum + linesOf(item, 0.95), 0);
  const entries = items.map((item) => markup`<li>${item}</li>`);
  return {
    height: LINE * lines + 0.4 * items.length + 2,
    piece: isOrdered ? markup`<ol>${entries}</ol>` : markup`<ul>${entries}</ul>`,
  };
}

/** A figure of a stated height. */
export function figure(piece: Markup, height: number, caption = ''): Block {
  const words = caption === '' ? [] : [markup`<figcaption>${caption}</figcaption>`];
  return {
    height: height + (caption === '' ? 2 : 2 + LINE * linesOf(caption)),
    piece: markup`<figure>${piece}${words}</figure>`,
  };
}

/** A cell: text, a piece, or a place to write by hand. */
export type Cell = string | Markup | typeof BLANK;
export const BLANK: unique symbol = Symbol('blank');

export interface Table {
  readonly caption: string;
  readonly heads: readonly string[];
  /** The first cell of a row names it. */
  readonly rows: readonly (readonly Cell[])[];
  /** Share of the page's width of each column. */
  readonly widths: readonly number[];
  /** Smaller type, for tables of many rows. */
  readonly isDense?: boolean;
  /** Columns of text instead of numbers. */
  readonly words?: readonly number[];
}

function cellText(cell: Cell): string {
  if (typeof cell === 'string') return cell;
  return cell instanceof Markup ? cell.text.replace(/<[^>]*>/g, '') : '';
}

function cellPiece(table: Table, cell: Cell, column: number): Markup {
  if (column === 0) return markup`<th scope="row">${cell === BLANK ? '' : cell}</th>`;
  if (cell === BLANK) return markup`<td class="blank"></td>`;
  const isWords = table.words?.includes(column) ?? false;
  return isWords ? markup`<td class="words">${cell}</td>` : markup`<td>${cell}</td>`;
}

function lines(table: Table, cells: readonly (Cell | string)[]): number {
  return Math.max(
    1,
    ...cells.map((cell, column) =>
      linesOf(cellText(cell), (table.widths[column] ?? 1) / (table.isDense === true ? DENSE : 1)),
    ),
  );
}

function rowHeight(table: Table, cells: readonly (Cell | string)[]): number {
  const height = ROW + LINE * (lines(table, cells) - 1);
  return table.isDense === true ? DENSE * height : height;
}

function tableBlock(table: Table, rows: Table['rows']): Block {
  const heads = table.heads.map((head, column) =>
    table.words?.includes(column)
      ? markup`<th scope="col" class="words">${head}</th>`
      : markup`<th scope="col">${head}</th>`,
  );
  const columns = table.widths.map((width) => markup`<col width="${(100 * width).toFixed(1)}%">`);
  const body = rows.map(
    (row) => markup`<tr>${row.map((cell, column) => cellPiece(table, cell, column))}</tr>\n`,
  );
  const heights = rows.reduce((sum, row) => sum + rowHeight(table, row), 0);
  return {
    height: heights + rowHeight(table, table.heads) + 3.5,
    piece: markup`<table class="${table.isDense === true ? 'dense' : 'plain'}" aria-label="${table.caption}"><colgroup>${columns}</colgroup><thead><tr>${heads}</tr></thead><tbody>\n${body}</tbody></table>`,
  };
}

/** A table in as many blocks as its rows need, none higher than `room`. */
export function tableBlocks(table: Table, room: number): Block[] {
  const blocks: Block[] = [];
  const head = rowHeight(table, table.heads) + 3.5;
  let rows: (readonly Cell[])[] = [];
  let height = head;
  for (const row of table.rows) {
    const more = rowHeight(table, row);
    if (rows.length > 0 && height + more > room) {
      blocks.push(tableBlock(table, rows));
      rows = [];
      height = head;
    }
    rows.push(row);
    height += more;
  }
  if (rows.length > 0) blocks.push(tableBlock(table, rows));
  return blocks;
}

/** The blocks on pages of `room` mm each, in their order; a heading is never left alone at a page's foot. */
export function pagesOf(blocks: readonly Block[], room: number): Piece[] {
  const pages: Markup[][] = [[]];
  let left = room;
  blocks.forEach(({ height, piece, isHead }, at) => {
    const follows = isHead === true ? (blocks[at + 1]?.height ?? 0) : 0;
    if (height + follows > left && pages.at(-1)!.length > 0) {
      pages.push([]);
      left = room;
    }
    pages.at(-1)!.push(piece);
    left -= height;
  });
  return pages;
}
