/** Which part of a fit belongs to which typed row. */
import type { Alone } from '../../../solver/fit/agreement.ts';
import type { FitReading } from '../../../solver/fit/fit.ts';
import type { FitsState } from '../../state/fits.ts';

export interface RowResult {
  readonly fitted: FitReading;
  readonly alone: Alone | null;
  /** Whether the rest would agree without it. */
  readonly isSuspect: boolean;
}

type Shown = Pick<FitsState, 'asked' | 'found'>;

/** What the fit says of the reading in a row: null where it was not in it, 'unreached' where its pose is out of reach. */
export function resultOf({ asked, found }: Shown, id: number): RowResult | 'unreached' | null {
  const given = asked?.rows.indexOf(id) ?? -1;
  if (given < 0 || found === null) return null;
  if (!found.ok) return found.why === 'noReadings' ? 'unreached' : null;
  if (found.unreached.includes(given)) return 'unreached';
  const index = given - found.unreached.filter((other) => other < given).length;
  const fitted = found.readings[index];
  if (fitted === undefined) return null;
  return { fitted, alone: found.alone[index] ?? null, isSuspect: found.suspects.includes(index) };
}
