/** What a drawing is made of: strokes, circles and words on layers, in mm on the paper at full size, y upward. */

export type Spot = readonly [number, number];

/** `outline`: edges of metal; `centre`: centrelines and centres; `dimension`; `sheet`: title block and notes. */
export type Layer = 'outline' | 'centre' | 'dimension' | 'sheet';

export type Mark =
  | { readonly kind: 'stroke'; readonly layer: Layer; readonly spots: readonly Spot[] }
  | { readonly kind: 'circle'; readonly layer: Layer; readonly at: Spot; readonly radius: number }
  | {
      readonly kind: 'words';
      readonly layer: Layer;
      readonly at: Spot;
      readonly text: string;
      /** Height of capitals, mm. */
      readonly height: number;
      readonly anchor: 'start' | 'middle' | 'end';
      /** Turn, degrees counter-clockwise. */
      readonly turn: number;
    };

export interface Drawing {
  /** Part of a file's name. */
  readonly key: string;
  readonly title: string;
  /** The paper it fills, mm. */
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

export function stroke(layer: Layer, ...spots: Spot[]): Mark {
  return { kind: 'stroke', layer, spots };
}

export function words(
  layer: Layer,
  at: Spot,
  text: string,
  height: number,
  anchor: 'start' | 'middle' | 'end' = 'start',
  turn = 0,
): Mark {
  return { kind: 'words', layer, at, text, height, anchor, turn };
}

/** A cross at a centre. */
export function centreMark([x, y]: Spot, size = 6): Mark[] {
  return [
    stroke('centre', [x - size, y], [x + size, y]),
    stroke('centre', [x, y - size], [x, y + size]),
  ];
}

/** The corners of what the marks cover: [least x, least y, greatest x, greatest y]; words by their anchor and a rough width. */
export function extentOf(marks: readonly Mark[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (x: number, y: number): void => {
    box[0] = Math.min(box[0], x);
    box[1] = Math.min(box[1], y);
    box[2] = Math.max(box[2], x);
    box[3] = Math.max(box[3], y);
  };
  for (const mark of marks) {
    if (mark.kind === 'stroke') for (const [x, y] of mark.spots) take(x, y);
    else if (mark.kind === 'circle') {
      take(mark.at[0] - mark.radius, mark.at[1] - mark.radius);
      take(mark.at[0] + mark.radius, mark.at[1] + mark.radius);
    } else takeWords(mark, take);
  }
  return box;
}

/** Width of a letter as a part of its height, on the wide side. */
export const LETTER = 0.72;

function takeWords(mark: Mark & { kind: 'words' }, take: (x: number, y: number) => void): void {
  const wide = LETTER * mark.height * mark.text.length;
  const from = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? -wide / 2 : -wide;
  const turn = (mark.turn * Math.PI) / 180;
  for (const along of [from, from + wide]) {
    for (const up of [-0.3 * mark.height, mark.height]) {
      take(
        mark.at[0] + along * Math.cos(turn) - up * Math.sin(turn),
        mark.at[1] + along * Math.sin(turn) + up * Math.cos(turn),
      );
    }
  }
}

/** The marks shifted. */
export function placed(marks: readonly Mark[], by: Spot): Mark[] {
  const move = ([x, y]: Spot): Spot => [x + by[0], y + by[1]];
  return marks.map((mark) =>
    mark.kind === 'stroke'
      ? { ...mark, spots: mark.spots.map(move) }
      : { ...mark, at: move(mark.at) },
  );
}
