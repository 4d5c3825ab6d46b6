/** Wheels and tyres that might be fitted: up to three candidates, what is being typed into them, and the one that is on trial. */
import { createStore } from 'zustand/vanilla';
import { USUAL_BEARING } from '../../solver/fitment/bearing.ts';
import { type Candidate, candidateOf } from '../../solver/fitment/candidate.ts';
import { fitCandidate } from '../../solver/fitment/fit.ts';
import type { Model } from '../../solver/index.ts';
import { type DocumentStore, sameModel } from './document.ts';

export const MOST_CANDIDATES = 3;

/** The names of candidates; each keeps its own while others come and go. */
export const NAMES = ['A', 'B', 'C'] as const;
export type CandidateName = (typeof NAMES)[number];

/** What a candidate is typed in by. Offset and backspacing are two ways to the same mounting. */
export const FIELDS = [
  'tyre',
  'rimDiameter',
  'rimWidth',
  'offset',
  'backspacing',
  'spacer',
  'mass',
] as const;
export type Field = (typeof FIELDS)[number];

/** A text that was typed and not taken: it stays until it is taken or given up. */
export interface FieldDraft {
  readonly text: string;
  /** Why it was not taken; null while it is still being typed. */
  readonly message: string | null;
  /** A tyre size that was probably meant. */
  readonly nearest?: string;
  /** True where the text can be taken as it was written all the same. */
  readonly asWritten?: boolean;
}

export type Drafts = Readonly<Partial<Record<Field, FieldDraft>>>;

export interface Slot {
  readonly name: CandidateName;
  readonly candidate: Candidate;
  readonly drafts: Drafts;
}

/** A candidate on the bench, and all it takes to have back what was there. */
export interface Trial {
  readonly name: CandidateName;
  /** The document's model before and with the candidate. */
  readonly before: Model;
  readonly fitted: Model;
  /** The design that was held before. */
  readonly held: Model | null;
}

export interface FitmentState {
  readonly slots: readonly Slot[];
  /** How far inboard of the hub face the bearing's middle is taken to lie, mm. */
  readonly bearing: number;
  readonly trial: Trial | null;
}

export type FitmentStore = ReturnType<typeof createFitment>;

export function createFitment(documentStore: DocumentStore) {
  const store = createStore<FitmentState>(() => ({
    slots: [],
    bearing: USUAL_BEARING,
    trial: null,
  }));
  const { getState, setState } = store;

  /** The design the candidates are compared with: the present one, or during a trial the one before it. */
  function reference(): Model {
    return getState().trial?.before ?? documentStore.getState().model;
  }

  function change(name: CandidateName, to: (slot: Slot) => Slot): void {
    setState({ slots: getState().slots.map((slot) => (slot.name === name ? to(slot) : slot)) });
  }

  /** Adds a candidate that starts as a copy of another, or of what is fitted; none beyond the third. */
  function add(from?: Candidate): CandidateName | null {
    const { slots } = getState();
    const name = NAMES.find((free) => slots.every((slot) => slot.name !== free));
    if (name === undefined) return null;
    const slot: Slot = { name, candidate: from ?? candidateOf(reference()), drafts: {} };
    setState({ slots: [...slots, slot].sort((a, b) => a.name.localeCompare(b.name)) });
    return name;
  }

  function remove(name: CandidateName): void {
    setState({ slots: getState().slots.filter((slot) => slot.name !== name) });
  }

  /** Takes a candidate's new state and puts away the drafts of the fields that brought it. */
  function take(name: CandidateName, candidate: Candidate, done: readonly Field[]): void {
    change(name, (slot) => {
      const drafts = { ...slot.drafts };
      for (const field of done) delete drafts[field];
      return { ...slot, candidate, drafts };
    });
  }

  /** Keeps a text that was typed, or with null gives it up. */
  function draft(name: CandidateName, field: Field, text: FieldDraft | null): void {
    change(name, (slot) => {
      const { [field]: _, ...drafts } = slot.drafts;
      return { ...slot, drafts: text === null ? drafts : { ...drafts, [field]: text } };
    });
  }

  function putBackHeld({ held }: Trial): void {
    setState({ trial: null });
    documentStore.setState({ held });
  }

  /** Puts the candidate on the bench as one entry of the history; false where it does not fit or changes nothing. */
  function mount(candidate: Candidate, from: Model): Model | null {
    const result = fitCandidate(from, candidate);
    if (!result.ok || sameModel(result.model, from)) return null;
    return documentStore.edit(() => result.model) ? documentStore.getState().model : null;
  }

  /** Tries a candidate: what is there is held as the ghost, the candidate comes on the bench. A trial before it is taken back. */
  function tryOn(name: CandidateName): boolean {
    takeBack();
    const slot = getState().slots.find((other) => other.name === name);
    if (slot === undefined) return false;
    const { model: before, held } = documentStore.getState();
    const fitted = mount(slot.candidate, before);
    if (fitted === null) return false;
    documentStore.setState({ held: before });
    setState({ trial: { name, before, fitted, held } });
    return true;
  }

  /** Takes the candidate off again: the design and the held one are as before the trial. Later edits to other parts stay. */
  function takeBack(): void {
    const { trial } = getState();
    if (trial === null) return;
    putBackHeld(trial);
    const { model } = documentStore.getState();
    const { wheel, tyre } = trial.before;
    if (model === trial.fitted) documentStore.undo();
    else documentStore.edit((now) => ({ ...now, wheel, tyre }));
  }

  /** Leaves a candidate on the bench, with or without a trial before. The held design is as it was. */
  function keep(name: CandidateName): boolean {
    const { trial, slots } = getState();
    if (trial?.name === name) {
      putBackHeld(trial);
      return true;
    }
    takeBack();
    const slot = slots.find((other) => other.name === name);
    return slot !== undefined && mount(slot.candidate, documentStore.getState().model) !== null;
  }

  // Undo, another file, another tab's work: a trial ends where its design is gone or its ghost let go of.
  documentStore.subscribe(({ model, held }) => {
    const { trial } = getState();
    if (trial === null) return;
    if (model === trial.before) putBackHeld(trial);
    else if (held !== trial.before) setState({ trial: null });
  });

  return { ...store, reference, add, remove, take, draft, tryOn, takeBack, keep };
}
