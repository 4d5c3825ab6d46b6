/** A drawing as SVG to scale: one user unit is one millimetre. */
import { plainText } from '../markup.ts';
import { type Drawing, type Layer, LETTER, type Mark } from './marks.ts';

/** Widths of lines on paper, mm (ISO 128: thick and thin). */
const WIDTHS: Readonly<Record<Layer, number>> = {
  outline: 0.5,
  centre: 0.18,
  dimension: 0.18,
  sheet: 0.25,
};
const LAYERS: readonly Layer[] = ['outline', 'centre', 'dimension', 'sheet'];
/** Height of capitals as a part of the type's size. */
const CAPITALS = 0.7;

function tidy(mm: number): string {
  return String(Math.round(mm * 1000) / 1000);
}

function one(mark: Mark, height: number): string {
  const y = (up: number): string => tidy(height - up);
  if (mark.kind === 'stroke') {
    return `<polyline points="${mark.spots.map(([x, up]) => `${tidy(x)},${y(up)}`).join(' ')}"/>`;
  }
  const [x, up] = mark.at;
  if (mark.kind === 'circle') {
    return `<circle cx="${tidy(x)}" cy="${y(up)}" r="${tidy(mark.radius)}"/>`;
  }
  const turned =
    mark.turn === 0 ? '' : ` transform="rotate(${tidy(-mark.turn)} ${tidy(x)} ${y(up)})"`;
  const size = mark.height / CAPITALS;
  // Never wider than the room that was kept for it, whatever font there is.
  const most = LETTER * mark.height * mark.text.length;
  const fitted = `textLength="${tidy(Math.min(most, 0.55 * size * mark.text.length))}" lengthAdjust="spacingAndGlyphs"`;
  return `<text x="${tidy(x)}" y="${y(up)}" font-size="${tidy(size)}" text-anchor="${mark.anchor}" ${fitted}${turned}>${plainText(mark.text)}</text>`;
}

/** The drawing's marks as groups by layer, without the svg element around them; lines `weight` times as thick as on paper. */
export function svgMarks({ marks, height }: Drawing, weight = 1): string {
  return LAYERS.map((layer) => {
    const own = marks.filter((mark) => mark.layer === layer);
    const drawn = own.filter(({ kind }) => kind !== 'words').map((mark) => one(mark, height));
    const said = own.filter(({ kind }) => kind === 'words').map((mark) => one(mark, height));
    const dash = layer === 'centre' ? ' stroke-dasharray="6 1.5 1.5 1.5"' : '';
    const style = `fill="none" stroke="#000" stroke-width="${tidy(weight * WIDTHS[layer])}"${dash}`;
    return `<g data-layer="${layer}" ${style}>${drawn.join('')}</g><g data-layer="${layer}" fill="#000" font-family="sans-serif">${said.join('')}</g>`;
  }).join('');
}

/** The whole drawing. A weight above 1 is for a screen that shows it small. */
export function drawingSvg(drawing: Drawing, weight = 1): string {
  const { width, height, title } = drawing;
  const [w, h] = [tidy(width), tidy(height)];
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}"><title>${plainText(title)}</title><rect width="${w}" height="${h}" fill="#fff"/>${svgMarks(drawing, weight)}</svg>`;
}
