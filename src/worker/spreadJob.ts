/** How well the measures are known, in a pose or over the travel: one question at a time, the newest of each kind. */
import {
  ANSWER_KEYS,
  type AnswerKey,
  assemble,
  createSensitivities,
  inputSigmas,
  MEASURE_KEYS,
  type MeasureKey,
  type Model,
  sensitivityAt,
} from '../../solver/index.ts';
import { travelRange } from '../state/inputs.ts';
import type { Spread } from '../state/spread.ts';
import type { Uncertainties } from '../state/spreads.ts';
import type { Runner } from './background.ts';
import { type Knowledge, knowledgeOf, slopesOf, uncertaintyOf } from './knowledge.ts';

export interface SpreadRequest {
  /** The pose at (travel, rack); the whole travel at that rack; the set pose with what spoils it. */
  readonly kind: 'pose' | 'line' | 'set';
  /** Grows with every request. */
  readonly number: number;
  readonly model: Model;
  readonly travel: number;
  readonly rack: number;
}

export type SpreadAnswer =
  | { readonly kind: 'pose'; readonly number: number; readonly uncertainties: Uncertainties }
  | { readonly kind: 'line'; readonly number: number; readonly spread: Spread }
  | { readonly kind: 'set'; readonly number: number; readonly knowledge: Knowledge };

/** Poses of a line; in between it is taken as straight. */
const LINE = 25;

type Uncertain = (travel: number, rack: number) => Uncertainties;

/** Standard uncertainties of a design's answers in any pose; none out of reach. */
function uncertain(model: Model): Uncertain {
  const made = createSensitivities(assemble(model));
  const sigmas = inputSigmas(model, made.inputs);
  return (travel, rack) => {
    const found = sensitivityAt(made, travel, rack);
    if (typeof found === 'string') return {};
    return Object.fromEntries(
      ANSWER_KEYS.map((key): [AnswerKey, number] => [
        key,
        uncertaintyOf(slopesOf(found, made, key), sigmas),
      ]),
    );
  };
}

function spreadOver(model: Model, rack: number): Spread {
  const at = uncertain(model);
  const [least, most] = travelRange(model);
  const axis = Float64Array.from(
    { length: LINE },
    (_, i) => least + ((most - least) * i) / (LINE - 1),
  );
  const rows = Array.from(axis, (travel) => at(travel, rack));
  const columns = Object.fromEntries(
    MEASURE_KEYS.map((key): [MeasureKey, Float64Array] => [
      key,
      Float64Array.from(rows, (row) => row[key] ?? Number.NaN),
    ]),
  );
  return { axis, columns };
}

function answered({ kind, number, model, travel, rack }: SpreadRequest): SpreadAnswer {
  switch (kind) {
    case 'pose':
      return { kind, number, uncertainties: uncertain(model)(travel, rack) };
    case 'line':
      return { kind, number, spread: spreadOver(model, rack) };
    case 'set':
      return { kind, number, knowledge: knowledgeOf(model) };
  }
}

/** `later` runs a function soon, after whatever waits. */
export function createSpreadRunner(
  answer: (answer: SpreadAnswer) => void,
  later: (run: () => void) => void,
): Runner<SpreadRequest> {
  const waiting = new Map<SpreadRequest['kind'], SpreadRequest>();

  function turn(): void {
    const [next] = waiting.values();
    if (next === undefined) return;
    waiting.delete(next.kind);
    answer(answered(next));
    if (waiting.size > 0) later(turn);
  }

  return {
    ask(request) {
      const isIdle = waiting.size === 0;
      waiting.set(request.kind, request);
      if (isIdle) later(turn);
    },
  };
}
