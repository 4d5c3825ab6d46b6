/** The rim's contour as something to edit: the present wheel's in the document, or a candidate's. */
import { fitCandidate } from '../../../solver/fitment/fit.ts';
import { centrePlane } from '../../../solver/fitment/rimPlace.ts';
import type { Model, SectionPoint } from '../../../solver/index.ts';
import { wheelSection } from '../../../solver/model/rim.ts';
import { documentStore } from '../../state/bench.ts';
import type { CandidateName } from '../../state/fitment.ts';
import { fitment } from '../../state/fitted.ts';
import type { Column } from './columns.ts';

export interface Contour {
  /** The points in force, [s, ρ] from the wheel centre plane, mm. */
  readonly points: readonly SectionPoint[];
  /** The wheel centre plane from the hub face, mm. */
  readonly plane: number;
  /** True where they were drawn, false for the default of the rim's size. */
  readonly isDrawn: boolean;
  /** Takes other points, null for the default; answers why not. */
  readonly set: (points: readonly SectionPoint[] | null) => string | null;
  readonly begin: () => void;
  readonly end: () => void;
  readonly cancel: () => void;
}

function withSection(model: Model, points: readonly SectionPoint[] | null): Model {
  const { section: _, ...wheel } = model.wheel;
  return { ...model, wheel: points === null ? wheel : { ...wheel, section: points } };
}

function setPresent(points: readonly SectionPoint[] | null): string | null {
  if (documentStore.edit((model) => withSection(model, points))) return null;
  return documentStore.getState().refusal;
}

function setCandidate(name: CandidateName, points: readonly SectionPoint[] | null): string | null {
  const slot = fitment.getState().slots.find((other) => other.name === name);
  if (slot === undefined) return null;
  const { section: _, ...rest } = slot.candidate;
  const candidate = points === null ? rest : { ...rest, section: points };
  const fitted = fitCandidate(fitment.reference(), candidate);
  if (!fitted.ok) return fitted.message;
  fitment.take(name, candidate, []);
  return null;
}

/** What a candidate's contour was when a drag began. */
let before: readonly SectionPoint[] | null = null;

/** The contour of a column; null where there is none to edit: it does not fit, or a trial stands in for it. */
export function contourOf(column: Column, isTrial: boolean): Contour | null {
  const { model, slot } = column;
  if (model === null || (slot === null && isTrial)) return null;
  const common = {
    points: wheelSection(model.wheel),
    plane: centrePlane(model.wheel),
    isDrawn: model.wheel.section !== undefined,
  };
  if (slot === null) {
    return {
      ...common,
      set: setPresent,
      begin: documentStore.beginGesture,
      end: documentStore.endGesture,
      cancel: documentStore.cancelGesture,
    };
  }
  const set = (points: readonly SectionPoint[] | null) => setCandidate(slot.name, points);
  return {
    ...common,
    set,
    begin: () => {
      before = slot.candidate.section ?? null;
    },
    end: () => undefined,
    cancel: () => {
      set(before);
    },
  };
}

/** Tenths of a millimetre: finer is noise of the hand. */
export function rounded([s, radius]: SectionPoint): SectionPoint {
  return [Math.round(s * 10) / 10, Math.max(0, Math.round(radius * 10) / 10)];
}

/** The points with one of them elsewhere. */
export function moved(
  points: readonly SectionPoint[],
  index: number,
  to: SectionPoint,
): readonly SectionPoint[] {
  return points.map((point, i) => (i === index ? rounded(to) : point));
}

/** The points with another one half-way to the next. */
export function divided(points: readonly SectionPoint[], index: number): readonly SectionPoint[] {
  const [here, next] = [points[index], points[index + 1]];
  if (here === undefined || next === undefined) return points;
  const middle = rounded([(here[0] + next[0]) / 2, (here[1] + next[1]) / 2]);
  return [...points.slice(0, index + 1), middle, ...points.slice(index + 1)];
}
