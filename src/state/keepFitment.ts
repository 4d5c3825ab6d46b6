/** Candidates and what is half typed into them, kept on the shelf from one visit to the next. What is damaged in it is not taken. */
import type { Candidate, CandidateTyre, Mounting } from '../../solver/fitment/candidate.ts';
import type { SectionPoint } from '../../solver/index.ts';
import {
  type Drafts,
  FIELDS,
  type FieldDraft,
  type FitmentStore,
  NAMES,
  type Slot,
} from './fitment.ts';
import type { Shelf } from './shelf.ts';

export const FITMENT_KEY = 'armscribe.fitment';

type Read = Readonly<Record<string, unknown>>;

function readObject(value: unknown): Read | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Read)
    : null;
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function tyreOf(value: unknown): CandidateTyre | null {
  const read = readObject(value);
  if (typeof read?.['size'] === 'string') return { size: read['size'] };
  const [diameter, width] = [read?.['diameter'], read?.['width']];
  return isNumber(diameter) && isNumber(width) ? { diameter, width } : null;
}

function mountingOf(value: unknown): Mounting | null {
  const read = readObject(value);
  const [by, mm] = [read?.['by'], read?.['value']];
  return (by === 'offset' || by === 'backspacing') && isNumber(mm) ? { by, value: mm } : null;
}

function sectionOf(value: unknown): readonly SectionPoint[] | null {
  if (!Array.isArray(value) || value.length < 2) return null;
  const points = value.filter(
    (point): point is [number, number] =>
      Array.isArray(point) && point.length === 2 && point.every(isNumber),
  );
  return points.length === value.length ? points : null;
}

function candidateOf(value: unknown): Candidate | null {
  const read = readObject(value);
  if (read === null) return null;
  const { rimDiameter, rimWidth, spacer, mass } = read;
  const [tyre, mounting] = [tyreOf(read['tyre']), mountingOf(read['mounting'])];
  const section = sectionOf(read['section']);
  if (tyre === null || mounting === null) return null;
  if (!isNumber(rimDiameter) || !isNumber(rimWidth) || !isNumber(spacer)) return null;
  return {
    tyre,
    rimDiameter,
    rimWidth,
    mounting,
    spacer,
    ...(isNumber(mass) ? { mass } : {}),
    ...(section === null ? {} : { section }),
  };
}

/** Only the texts: why they were refused is found out again when they are entered. */
function draftsOf(value: unknown): Drafts {
  const read = readObject(value) ?? {};
  const entries = FIELDS.flatMap((field): [string, FieldDraft][] => {
    const text = readObject(read[field])?.['text'];
    return typeof text === 'string' ? [[field, { text, message: null }]] : [];
  });
  return Object.fromEntries(entries);
}

function slotsOf(value: unknown): readonly Slot[] {
  if (!Array.isArray(value)) return [];
  return NAMES.flatMap((name) => {
    const read = value.map(readObject).find((slot) => slot?.['name'] === name);
    const candidate = candidateOf(read?.['candidate']);
    return candidate === null ? [] : [{ name, candidate, drafts: draftsOf(read?.['drafts']) }];
  });
}

function parsed(text: string | null): Read {
  try {
    return readObject(JSON.parse(text ?? '{}')) ?? {};
  } catch {
    return {};
  }
}

/** Takes the kept candidates, and from then on writes them at every change. */
export function keepFitment(fitment: FitmentStore, shelf: Shelf): void {
  const kept = parsed(shelf.read(FITMENT_KEY));
  const bearing = kept['bearing'];
  fitment.setState({ slots: slotsOf(kept['slots']), ...(isNumber(bearing) ? { bearing } : {}) });
  fitment.subscribe((state, before) => {
    if (state.slots === before.slots && state.bearing === before.bearing) return;
    shelf.write(FITMENT_KEY, JSON.stringify({ slots: state.slots, bearing: state.bearing }));
  });
}
