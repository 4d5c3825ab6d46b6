/** Fills the plot with the bands of the picture: between nodes as the contours have it, dotted where good, hatched out of reach. */
import type { Picture } from '../../../solver/index.ts';
import { bandOf, EDGES } from './bands.ts';

type Rgb = readonly [number, number, number];

function parsed(colour: string): Rgb {
  const value = Number.parseInt(colour.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
}

function packed([red, green, blue]: Rgb): number {
  return (255 << 24) | (blue << 16) | (green << 8) | red;
}

/** A step away from a ground towards black or white, for a pattern on it. */
function marked(ground: Rgb, isDark: boolean): Rgb {
  const shade = (part: number) => Math.round(isDark ? part + 0.3 * (255 - part) : part * 0.72);
  return [shade(ground[0]), shade(ground[1]), shade(ground[2])];
}

export interface BandPaint {
  readonly picture: Picture;
  readonly limit: number;
  readonly colours: readonly string[];
  readonly isDark: boolean;
  /** +1 when the first axis grows to the right. */
  readonly sense: 1 | -1;
  /** A CSS pixel in the picture's. */
  readonly dot: number;
}

/** Node below and share of the way to the next, for a pixel of `size` along an axis of `count` nodes. */
function placeOn(i: number, size: number, count: number): readonly [number, number] {
  const exact = ((i + 0.5) / size) * (count - 1);
  const node = Math.min(count - 2, Math.floor(exact));
  return [node, exact - node];
}

/** The pixels of a plot `size` × `size`. */
export function bandPixels(paint: BandPaint, size: number): ImageData {
  const { picture, limit, sense, dot, isDark } = paint;
  const image = new ImageData(size, size);
  const pixels = new Uint32Array(image.data.buffer);
  const grounds = paint.colours.map(parsed);
  const plain = grounds.map(packed);
  const spots = grounds.map((ground) => packed(marked(ground, isDark)));
  const worst = EDGES.length;
  const { values, xs, ys } = picture;
  const [dots, spot] = [Math.max(4, Math.round(7 * dot)), Math.max(1, Math.round(1.4 * dot))];
  for (let y = 0; y < size; y += 1) {
    const [row, v] = placeOn(size - 1 - y, size, ys.length);
    for (let x = 0; x < size; x += 1) {
      const [column, u] = placeOn(sense === 1 ? x : size - 1 - x, size, xs.length);
      const node = row * xs.length + column;
      const low = values[node]! * (1 - u) + values[node + 1]! * u;
      const high = values[node + xs.length]! * (1 - u) + values[node + xs.length + 1]! * u;
      const value = low * (1 - v) + high * v;
      const at = y * size + x;
      if (Number.isNaN(value)) {
        pixels[at] = (x + y) % dots < spot ? spots[worst]! : plain[worst]!;
        continue;
      }
      const band = bandOf(value, limit);
      const shift = Math.floor(y / dots) % 2 === 0 ? 0 : dots >> 1;
      const isSpot = band === 0 && y % dots < spot && (x + shift) % dots < spot;
      pixels[at] = isSpot ? spots[0]! : plain[band]!;
    }
  }
  return image;
}
