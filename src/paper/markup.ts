/** Pieces of a page. Text that is put into one is escaped, so that nothing a model says can be read as markup. */
import { escaped } from '../../solver/index.ts';

/** A piece that may go into a page as it stands; only `markup` makes one. */
export class Markup {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }
}

export type Piece = Markup | string | number | readonly (Markup | string)[];

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as HTML and XML both show it: entities for what means something there, \uXXXX for what does not print. */
export function plainText(text: string): string {
  const lines = text.split('\n').map(escaped).join('\n');
  return lines.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);
}

function written(piece: Piece): string {
  if (piece instanceof Markup) return piece.text;
  if (typeof piece === 'object') return piece.map(written).join('');
  return plainText(String(piece));
}

/** A piece out of markup with text, numbers and other pieces in it. */
export function markup(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  const text = strings.map((string, at) => {
    const piece = pieces[at];
    return piece === undefined ? string : string + written(piece);
  });
  return new Markup(text.join(''));
}

/** Nothing. */
export const EMPTY: Markup = markup``;
