/** A wheel and tyre that might be fitted, as they are bought: sizes, mounting, spacer, mass. Lengths mm, sizes in inch codes. */
import { wheelSpacer } from '../model/defaults.ts';
import type { Model, SectionPoint } from '../model/model.ts';
import { innerReach } from './rimPlace.ts';

/**
 * Where the mounting face lies, by whichever figure is known: the offset from the wheel's centre plane, positive outboard, or
 * the backspacing from the inner lip's edge. The one that was stated stays when the rim's width changes.
 */
export interface Mounting {
  readonly by: 'offset' | 'backspacing';
  /** mm. */
  readonly value: number;
}

/** A tyre by its size as written, or by measured dimensions, mm. */
export type CandidateTyre =
  | { readonly size: string }
  | { readonly diameter: number; readonly width: number };

export interface Candidate {
  readonly tyre: CandidateTyre;
  /** Rim diameter and width, inch codes. */
  readonly rimDiameter: number;
  readonly rimWidth: number;
  readonly mounting: Mounting;
  /** Thickness of the spacer behind the wheel, mm. */
  readonly spacer: number;
  /** Mass of the wheel, kg, where it is known. */
  readonly mass?: number;
  /** The rim's contour where it was measured: the metal's mid-surface, [s, ρ] from the wheel centre plane, mm. */
  readonly section?: readonly SectionPoint[];
}

/** The wheel and tyre of a model, to start a candidate from. */
export function candidateOf({ wheel, tyre }: Model): Candidate {
  const { size, diameter, width } = tyre;
  return {
    tyre:
      diameter !== undefined && width !== undefined ? { diameter, width } : { size: size ?? '' },
    rimDiameter: wheel.diameter,
    rimWidth: wheel.width,
    mounting: { by: 'offset', value: wheel.offset },
    spacer: wheelSpacer(wheel),
    ...(wheel.mass === undefined ? {} : { mass: wheel.mass }),
    ...(wheel.section === undefined ? {} : { section: wheel.section }),
  };
}

/** The candidate's wheel but for what a mounting does not depend on. */
function bareWheel(candidate: Candidate): Model['wheel'] {
  return {
    diameter: candidate.rimDiameter,
    width: candidate.rimWidth,
    offset: 0,
    ...(candidate.section === undefined ? {} : { section: candidate.section }),
  };
}

/** Offset of the mounting face from the centre plane, mm, positive outboard, stated or from the backspacing. */
export function offsetOf(candidate: Candidate): number {
  const { by, value } = candidate.mounting;
  return by === 'offset' ? value : value - innerReach(bareWheel(candidate));
}

/** Distance from the inner lip's edge to the mounting face, mm, stated or from the offset. */
export function backspacingOf(candidate: Candidate): number {
  const { by, value } = candidate.mounting;
  return by === 'backspacing' ? value : value + innerReach(bareWheel(candidate));
}
