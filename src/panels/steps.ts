/** How far one press of a key moves the bench: plain, coarse (Shift) or fine (Alt), round in the unit shown. */
import { MM_PER_INCH } from '../../solver/units.ts';
import type { LengthUnit } from '../state/view.ts';

interface Steps {
  readonly plain: number;
  readonly coarse: number;
  readonly fine: number;
}

const STEPS: Readonly<Record<LengthUnit, Steps>> = {
  mm: { plain: 5, coarse: 25, fine: 0.5 },
  inch: { plain: 0.25 * MM_PER_INCH, coarse: MM_PER_INCH, fine: 0.02 * MM_PER_INCH },
  sixteenth: {
    plain: 0.25 * MM_PER_INCH,
    coarse: MM_PER_INCH,
    fine: MM_PER_INCH / 16,
  },
};

/** Step of a key press, mm. */
export function keyStep(
  event: { readonly shiftKey: boolean; readonly altKey: boolean },
  unit: LengthUnit,
): number {
  if (event.shiftKey) return STEPS[unit].coarse;
  return event.altKey ? STEPS[unit].fine : STEPS[unit].plain;
}
