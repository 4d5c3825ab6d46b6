/** What typing into a candidate's field does: the text is taken and the candidate changes, or the text stays with the reason. */
import { fitCandidate } from '../../../solver/fitment/fit.ts';
import type { CandidateName, Field } from '../../state/fitment.ts';
import { fitment } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { type FieldSpec, type Taken, takeSize } from './fields.ts';

/** Offset and backspacing are one mounting: taking either puts both drafts away. */
function settled(field: Field): readonly Field[] {
  if (field === 'offset' || field === 'backspacing') return ['offset', 'backspacing'];
  return field === 'rimDiameter' || field === 'rimWidth' ? ['rimDiameter', 'rimWidth'] : [field];
}

function settle(name: CandidateName, field: Field, text: string, result: Taken): boolean {
  if (!result.ok) {
    const { ok: _, ...why } = result;
    fitment.draft(name, field, { text, ...why });
    return false;
  }
  const fitted = fitCandidate(fitment.reference(), result.candidate);
  if (!fitted.ok) {
    fitment.draft(name, field, { text, message: fitted.message });
    return false;
  }
  fitment.take(name, result.candidate, settled(field));
  return true;
}

function slotOf(name: CandidateName) {
  return fitment.getState().slots.find((slot) => slot.name === name);
}

/** Tries to have a field's draft taken; what is refused stays as typed. */
export function enterField(name: CandidateName, spec: FieldSpec, unit: LengthUnit): boolean {
  const slot = slotOf(name);
  const draft = slot?.drafts[spec.field];
  if (slot === undefined || draft === undefined) return true;
  if (draft.text.trim() === spec.shown(slot.candidate, unit)) {
    fitment.draft(name, spec.field, null);
    return true;
  }
  return settle(name, spec.field, draft.text, spec.take(slot.candidate, draft.text, unit));
}

/** Takes the size that was probably meant, or with `isInsisted` the one that was written. */
export function takeReading(name: CandidateName, text: string, isInsisted: boolean): boolean {
  const slot = slotOf(name);
  if (slot === undefined) return false;
  return settle(name, 'tyre', text, takeSize(slot.candidate, text, isInsisted));
}
