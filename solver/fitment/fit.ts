/** Puts a candidate on a model: the model it would be, or what is wrong with the candidate. */
import type { Model, Wheel } from '../model/model.ts';
import { formatModelError, type ModelError, readModel } from '../model/parse.ts';
import { parseTyreSize } from '../model/tyre.ts';
import { type Candidate, offsetOf } from './candidate.ts';
import { centrePlane } from './rimPlace.ts';
import { withSquat } from './squat.ts';

/** What of a candidate a message belongs to; `model` where it is none of its fields. */
export type CandidateField =
  | 'tyre'
  | 'rimDiameter'
  | 'rimWidth'
  | 'mounting'
  | 'spacer'
  | 'mass'
  | 'section'
  | 'model';

export type FitResult =
  | { readonly ok: true; readonly model: Model }
  | { readonly ok: false; readonly field: CandidateField; readonly message: string };

/** Rims that are made, inch codes, with room on either side. Common practice, no source. */
export const RIM_DIAMETERS: readonly [number, number] = [8, 30];
export const RIM_WIDTHS: readonly [number, number] = [3, 20];
/** Farthest a mounting face is from its centre plane, mm. Common practice, no source. */
export const MOST_OFFSET = 250;

const FIELDS: readonly (readonly [string, CandidateField])[] = [
  ['tyre', 'tyre'],
  ['wheel.diameter', 'rimDiameter'],
  ['wheel.width', 'rimWidth'],
  ['wheel.offset', 'mounting'],
  ['wheel.spacer', 'spacer'],
  ['wheel.mass', 'mass'],
  ['wheel.section', 'section'],
];

function fieldOf(path: string): CandidateField {
  return FIELDS.find(([start]) => path.startsWith(start))?.[1] ?? 'model';
}

function outside(value: number, [low, high]: readonly [number, number]): boolean {
  return !(value >= low && value <= high);
}

/** What no wheel that is made can be; null where nothing is wrong. */
function unlikely(candidate: Candidate): Exclude<FitResult, { ok: true }> | null {
  const refused = (field: CandidateField, message: string) =>
    ({ ok: false, field, message }) as const;
  if (outside(candidate.rimDiameter, RIM_DIAMETERS)) {
    const [low, high] = RIM_DIAMETERS;
    return refused('rimDiameter', `Rims are made from ${low} to ${high} in.`);
  }
  if (outside(candidate.rimWidth, RIM_WIDTHS)) {
    const [low, high] = RIM_WIDTHS;
    return refused('rimWidth', `Rims are made from ${low} to ${high} in wide.`);
  }
  if (outside(offsetOf(candidate), [-MOST_OFFSET, MOST_OFFSET])) {
    const message = `That puts the mounting face more than ${MOST_OFFSET} mm from the rim's middle.`;
    return refused('mounting', message);
  }
  if ('size' in candidate.tyre) {
    const parsed = parseTyreSize(candidate.tyre.size);
    if (parsed.ok && parsed.size.rimDiameterCode !== candidate.rimDiameter) {
      const { rimDiameterCode } = parsed.size;
      const message = `This tyre is for a ${rimDiameterCode} in rim; the rim is ${candidate.rimDiameter} in.`;
      return refused('tyre', message);
    }
  }
  return null;
}

/**
 * What is left of the wheel that was there. A contour goes with the candidate; a disc drawn for another rim or another offset
 * would no longer meet rim and mounting face, and weights stuck to another rim are not on this one: they are not carried over.
 */
function wheelOf(present: Wheel, candidate: Candidate): Wheel {
  const { section: _section, disc, weights, mass: _mass, spacer: _spacer, ...rest } = present;
  const offset = offsetOf(candidate);
  const isSameRim =
    present.diameter === candidate.rimDiameter && present.width === candidate.rimWidth;
  const isSameDisc = isSameRim && present.offset === offset;
  return {
    ...rest,
    diameter: candidate.rimDiameter,
    width: candidate.rimWidth,
    offset,
    ...(candidate.spacer === 0 && present.spacer === undefined ? {} : { spacer: candidate.spacer }),
    ...(candidate.section === undefined ? {} : { section: candidate.section }),
    ...(isSameRim && weights !== undefined ? { weights } : {}),
    ...(isSameDisc && disc !== undefined ? { disc } : {}),
    ...(candidate.mass === undefined ? {} : { mass: candidate.mass }),
  };
}

function tyreOf(present: Model['tyre'], candidate: Candidate): Model['tyre'] {
  const { loadedRadius } = present;
  return { ...candidate.tyre, ...(loadedRadius === undefined ? {} : { loadedRadius }) };
}

/**
 * The brake stays on the hub: its envelope is stated from the wheel centre plane, and is stated anew from the plane of the
 * wheel that comes on.
 */
function brakeOf({ brake, wheel }: Model, next: Wheel): Pick<Model, 'brake'> {
  if (brake === undefined) return {};
  const shift = centrePlane(wheel) - centrePlane(next);
  if (shift === 0) return { brake };
  return { brake: { ...brake, section: brake.section.map(([s, radius]) => [s + shift, radius]) } };
}

function messageOf({ found, wanted }: ModelError): string {
  return `Found ${found}; wanted ${wanted}.`;
}

/**
 * The model with the candidate on it, read through the model's own door. A loaded radius that `model` states is kept in
 * proportion to the tyre; everything else of the corner stays where it is.
 */
export function fitCandidate(model: Model, candidate: Candidate): FitResult {
  const refused = unlikely(candidate);
  if (refused !== null) return refused;
  const wheel = wheelOf(model.wheel, candidate);
  const wanted = withSquat(model, {
    ...model,
    wheel,
    tyre: tyreOf(model.tyre, candidate),
    ...brakeOf(model, wheel),
  });
  const read = readModel(wanted, 'candidate');
  if (read.ok) return read;
  const field = fieldOf(read.error.path);
  const message = field === 'model' ? formatModelError(read.error) : messageOf(read.error);
  return { ok: false, field, message };
}
