/** A full-size drawing over several pages, to be cut and taped: overlap, register marks, letters and numbers, a check scale. */

import { plainText } from '../markup.ts';
import { PAPER_SIZES, type PaperSize } from '../paperSize.ts';
import type { Drawing } from './marks.ts';
import { svgMarks } from './svg.ts';

/** What printers leave white, and what neighbouring pages share, mm. */
export const EDGE = 12;
export const OVERLAP = 10;

export interface Tile {
  /** A1, A2 … in rows from the top. */
  readonly name: string;
  /** The drawing's piece on it, mm from the drawing's left and top. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** How often a page fits along a length, neighbours sharing the overlap. */
function count(length: number, page: number): number {
  return Math.max(1, Math.ceil((length - OVERLAP) / (page - OVERLAP) - 1e-9));
}

/** The pages' pieces; landscape where that takes fewer pages. */
export function tilesOf(
  { width, height }: Drawing,
  paper: PaperSize,
): { readonly tiles: readonly Tile[]; readonly page: readonly [number, number] } {
  const [short, long] = PAPER_SIZES[paper];
  const pages = [
    [short, long],
    [long, short],
  ] as const;
  const needs = pages.map(([w, h]) => count(width, w - 2 * EDGE) * count(height, h - 2 * EDGE));
  const page = needs[1]! < needs[0]! ? pages[1] : pages[0];
  const [wide, high] = [page[0] - 2 * EDGE, page[1] - 2 * EDGE];
  const tiles: Tile[] = [];
  for (let row = 0; row < count(height, high); row += 1) {
    for (let column = 0; column < count(width, wide); column += 1) {
      tiles.push({
        name: `${String.fromCharCode(65 + row)}${column + 1}`,
        left: column * (wide - OVERLAP),
        top: row * (high - OVERLAP),
        width: wide,
        height: high,
      });
    }
  }
  return { tiles, page };
}

/** Crosses at the corners of the overlap: neighbours lie right when their crosses meet. */
function register({ left, top, width, height }: Tile): string {
  const half = OVERLAP / 2;
  return [left + half, left + width - half]
    .flatMap((x) =>
      [top + half, top + height - half].map(
        (y) =>
          `<path d="M${x - 4} ${y}h8M${x} ${y - 4}v8" stroke="#000" stroke-width="0.2"/><circle cx="${x}" cy="${y}" r="2" fill="none" stroke="#000" stroke-width="0.2"/>`,
      ),
    )
    .join('');
}

/** A 100 mm bar in the page's lower margin, so that every page can be checked. */
function check(page: readonly [number, number]): string {
  const y = page[1] - 5;
  return `<path class="check" d="M${EDGE} ${y}h100M${EDGE} ${y - 2}v4M${EDGE + 100} ${y - 2}v4" stroke="#000" stroke-width="0.25"/><text x="${EDGE + 103}" y="${y + 1}" font-size="3.2" font-family="sans-serif">100 mm: measure it before you cut</text>`;
}

/** A document that prints the drawing at full size, page by page. Nothing in it is script. */
export function tiledDocument(drawing: Drawing, paper: PaperSize): string {
  const { tiles, page } = tilesOf(drawing, paper);
  const [w, h] = page;
  const marks = svgMarks(drawing);
  const pages = tiles.map((tile, at) => {
    const id = `tile-${at}`;
    const said = `${plainText(drawing.title)}, page ${tile.name} of ${tiles.at(-1)!.name}. Print at 100 %, no fitting.`;
    return `<section><svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}"><clipPath id="${id}"><rect x="${tile.left}" y="${tile.top}" width="${tile.width}" height="${tile.height}"/></clipPath><g transform="translate(${EDGE - tile.left} ${EDGE - tile.top})"><g clip-path="url(#${id})">${marks}${register(tile)}</g><rect x="${tile.left}" y="${tile.top}" width="${tile.width}" height="${tile.height}" fill="none" stroke="#000" stroke-width="0.1" stroke-dasharray="1 2"/></g><text x="${EDGE}" y="8" font-size="3.5" font-family="sans-serif">${said}</text>${check(page)}</svg></section>`;
  });
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${plainText(drawing.title)}, full size</title><style>@page{size:${w}mm ${h}mm;margin:0}html,body{margin:0;padding:0;background:#fff}section{width:${w}mm;height:${h}mm;overflow:hidden;break-after:page}section:last-child{break-after:auto}svg{display:block}</style></head><body>${pages.join('')}</body></html>`;
}
