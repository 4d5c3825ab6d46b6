/**
 * Designs kept on the shelf from one visit to the next, and shared with other tabs. What is damaged is set aside whole,
 * and what the browser will not keep is said.
 */
import { formatModelError, readModel } from '../../solver/index.ts';
import type { Designs, KeptDesign } from './designStore.ts';
import { PLACES } from './marks.ts';
import { type AsideParts, setAside } from './setAside.ts';

export const DESIGNS_KEY = 'armscribe.designs';
/** Damaged records go under this and the time, whole. */
export const DESIGNS_ASIDE_KEY = 'armscribe.designs.set-aside';

const NAME = 'kept designs';

type Read = Readonly<Record<string, unknown>>;

/** Designs that could be read, and why others could not. */
interface Reading {
  readonly kept: readonly KeptDesign[];
  readonly why: string | null;
}

function isObject(value: unknown): value is Read {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function designOf(value: unknown): KeptDesign | string {
  if (!isObject(value)) return `${NAME}: found no object, wanted a design`;
  const place = PLACES.find((letter) => letter === value['place']);
  if (place === undefined) return `${NAME}: found no place, wanted B, C or D`;
  const read = readModel(value['model'], NAME);
  if (!read.ok) return formatModelError(read.error);
  const origin = typeof value['origin'] === 'string' ? value['origin'] : NAME;
  return { place, model: read.model, origin, isShown: value['isShown'] !== false };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Reads a record of any content: each design by itself, so that one that is damaged takes no other with it. */
export function readDesigns(text: string): Reading {
  const value = parsed(text);
  if (!Array.isArray(value)) return { kept: [], why: `${NAME}: not readable as a list` };
  const found = value.map(designOf);
  const kept = PLACES.flatMap((place) =>
    found
      .filter((design): design is KeptDesign => typeof design !== 'string')
      .filter((design) => design.place === place)
      .slice(0, 1),
  );
  const why = found.find((design) => typeof design === 'string');
  return { kept, why: why ?? null };
}

/** Takes the kept designs, and from then on writes them at every change. Answers what takes another tab's. */
export function keepDesigns(designs: Designs, parts: AsideParts): (text: string) => void {
  const { shelf, notices } = parts;
  let written = shelf.read(DESIGNS_KEY);
  if (written !== null) {
    const { kept, why } = readDesigns(written);
    designs.setState({ kept });
    if (why !== null) {
      setAside(parts, {
        text: written,
        key: DESIGNS_ASIDE_KEY,
        notice: 'damaged-designs',
        words: `Designs this browser kept to compare with could not be read (${why}). They were set aside, not thrown away.`,
        fileName: 'armscribe-damaged-designs.txt',
      });
      // Said once: the next visit finds what was sound.
      written = JSON.stringify(kept);
      shelf.write(DESIGNS_KEY, written);
    }
  }

  designs.subscribe(({ kept }, before) => {
    if (kept === before.kept) return;
    const text = JSON.stringify(kept);
    if (text === written) return;
    written = text;
    if (shelf.write(DESIGNS_KEY, text)) {
      notices.dismiss('unkept-designs');
      return;
    }
    notices.say({
      key: 'unkept-designs',
      kind: 'alert',
      text: 'This browser cannot keep the designs beside the present one (a private window, or its storage is full): save those you want as files before the page is closed.',
    });
  });

  return (text) => {
    const { kept, why } = readDesigns(text);
    if (why !== null) return;
    written = text;
    designs.setState({ kept });
  };
}
