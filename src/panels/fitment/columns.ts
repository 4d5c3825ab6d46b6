/** The sheet's columns: what is fitted, then the candidates, each with the model it would be and its figures. */
import { useStore } from 'zustand';
import { type Candidate, candidateOf } from '../../../solver/fitment/candidate.ts';
import { type FitmentFigures, fitmentFigures } from '../../../solver/fitment/figures.ts';
import { type CandidateField, fitCandidate } from '../../../solver/fitment/fit.ts';
import type { Model } from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { sameModel } from '../../state/document.ts';
import type { CandidateName, Slot } from '../../state/fitment.ts';
import { fitment } from '../../state/fitted.ts';

export type ColumnKey = 'present' | CandidateName;

/** What a candidate comes to; `figures` is null where it does not fit. */
export interface Fitted {
  readonly model: Model | null;
  readonly figures: FitmentFigures | null;
  readonly refusal: { readonly field: CandidateField; readonly message: string } | null;
  /** True where it is what is fitted already. */
  readonly isPresent: boolean;
}

export interface Column extends Fitted {
  readonly key: ColumnKey;
  readonly title: string;
  readonly candidate: Candidate;
  /** The candidate's place in the store; null for what is fitted. */
  readonly slot: Slot | null;
}

/** One answer per candidate and design: a model keeps its identity while nothing changes. */
const known = new WeakMap<Candidate, { readonly reference: Model; readonly answer: Fitted }>();

function fitted(reference: Model, candidate: Candidate): Fitted {
  const last = known.get(candidate);
  if (last?.reference === reference) return last.answer;
  const result = fitCandidate(reference, candidate);
  const answer: Fitted = result.ok
    ? {
        model: result.model,
        figures: fitmentFigures(result.model),
        refusal: null,
        isPresent: sameModel(result.model, reference),
      }
    : { model: null, figures: null, refusal: result, isPresent: false };
  known.set(candidate, { reference, answer });
  return answer;
}

const presents = new WeakMap<Model, Column>();

function presentColumn(reference: Model): Column {
  const last = presents.get(reference);
  if (last !== undefined) return last;
  const column: Column = {
    key: 'present',
    title: 'Present',
    candidate: candidateOf(reference),
    slot: null,
    model: reference,
    figures: fitmentFigures(reference),
    refusal: null,
    isPresent: true,
  };
  presents.set(reference, column);
  return column;
}

/** The columns as they stand, the present one first. */
export function columnsOf(reference: Model, slots: readonly Slot[]): readonly Column[] {
  return [
    presentColumn(reference),
    ...slots.map(
      (slot): Column => ({
        key: slot.name,
        title: `Candidate ${slot.name}`,
        candidate: slot.candidate,
        slot,
        ...fitted(reference, slot.candidate),
      }),
    ),
  ];
}

export function useColumns(): readonly Column[] {
  const model = useStore(documentStore, (state) => state.model);
  const trial = useStore(fitment, (state) => state.trial);
  const slots = useStore(fitment, (state) => state.slots);
  return columnsOf(trial?.before ?? model, slots);
}
