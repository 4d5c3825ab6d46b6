/** How well the measures are known, in a pose or along a line of them: one question at a time, the newest of each kind. */
import {
  ANSWER_KEYS,
  type AnswerKey,
  assemble,
  type Band,
  bandOf,
  createSensitivities,
  inputSigmas,
  type Knowledge,
  knowledgeOf,
  type Model,
  sensitivityAt,
  uncertaintiesOf,
} from '../../solver/index.ts';
import { rackRange } from '../../solver/model/defaults.ts';
import { travelRange } from '../state/inputs.ts';
import type { Uncertainties } from '../state/spreads.ts';
import type { Runner } from './background.ts';

export interface SpreadRequest {
  /** The pose at (travel, rack); the whole travel at that rack, or the whole rack at that travel; what spoils the set pose. */
  readonly kind: 'pose' | 'travel' | 'rack' | 'set';
  /** Grows with every request. */
  readonly number: number;
  readonly model: Model;
  readonly travel: number;
  readonly rack: number;
}

export type SpreadAnswer =
  | { readonly kind: 'pose'; readonly number: number; readonly uncertainties: Uncertainties }
  | { readonly kind: 'travel' | 'rack'; readonly number: number; readonly band: Band }
  | { readonly kind: 'set'; readonly number: number; readonly knowledge: Knowledge };

/** Poses of a line; in between it is taken as straight. */
const LINE = 25;

/** Standard uncertainties of a pose; none out of reach. */
function poseUncertainties(model: Model, travel: number, rack: number): Uncertainties {
  const made = createSensitivities(assemble(model));
  const pose = sensitivityAt(made, travel, rack);
  if (typeof pose === 'string') return {};
  const found = uncertaintiesOf(pose, inputSigmas(model, made.inputs));
  return Object.fromEntries(ANSWER_KEYS.map((key, i): [AnswerKey, number] => [key, found[i]!]));
}

function bandAlong(model: Model, along: 'travel' | 'rack', at: number): Band {
  const made = createSensitivities(assemble(model));
  const [least, most] = along === 'travel' ? travelRange(model) : rackRange(model.steering);
  const axis = Float64Array.from(
    { length: LINE },
    (_, i) => least + ((most - least) * i) / (LINE - 1),
  );
  return bandOf(made, inputSigmas(model, made.inputs), along, axis, at);
}

function answered({ kind, number, model, travel, rack }: SpreadRequest): SpreadAnswer {
  if (kind === 'set') return { kind, number, knowledge: knowledgeOf(model) };
  if (kind === 'pose')
    return { kind, number, uncertainties: poseUncertainties(model, travel, rack) };
  return { kind, number, band: bandAlong(model, kind, kind === 'travel' ? rack : travel) };
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
