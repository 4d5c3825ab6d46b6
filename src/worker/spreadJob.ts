/** How well the measures are known, in one pose or over the travel: one question at a time, the newest of each kind. */
import {
  AXLE_KEYS,
  type AxleKey,
  assemble,
  axleInto,
  createAxle,
  createMeasures,
  createPose,
  inputSigma,
  inputsOf,
  inputValue,
  MEASURE_KEYS,
  type MeasureKey,
  type Model,
  measureInto,
  solve,
  withInput,
} from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';
import { travelRange } from '../state/inputs.ts';
import type { Spread } from '../state/spread.ts';
import type { Uncertainties } from '../state/spreads.ts';
import type { Runner } from './background.ts';
import type { Answer, AnswerKey, Knowledge } from './knowledge.ts';

export interface SpreadRequest {
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

const KEYS = [...MEASURE_KEYS, ...AXLE_KEYS];
const LINE = 25;

function valuesAt(model: Model, poses: readonly (readonly [number, number])[]): Float64Array[] {
  const corner = assemble(model);
  const pose = createPose();
  const measures = createMeasures();
  const axle = createAxle(corner);
  const axled = new Float64Array(AXLE_KEYS.length);
  return poses.map(([travel, rack]) => {
    const out = new Float64Array(KEYS.length).fill(Number.NaN);
    if (solve(corner, pose, travel, rack) !== 'reached') return out;
    measureInto(corner, pose, measures);
    axleInto(axle, travel, rack, axled);
    out.set(measures);
    out.set(axled, measures.length);
    return out;
  });
}

function spreadAt(model: Model, poses: readonly (readonly [number, number])[]): Float64Array[] {
  const sums = poses.map(() => new Float64Array(KEYS.length));
  for (const input of inputsOf(model)) {
    const sigma = inputSigma(model, input);
    if (!input.isMeasured || sigma === null || sigma === 0) continue;
    const value = inputValue(model, input);
    const h = 0.01 * sigma;
    const up = valuesAt(withInput(model, input, value + h), poses);
    const down = valuesAt(withInput(model, input, value - h), poses);
    sums.forEach((sum, p) => {
      for (let k = 0; k < sum.length; k += 1) {
        const slope = (up[p]![k]! - down[p]![k]!) / (2 * h);
        sum[k]! += (slope * sigma) ** 2;
      }
    });
  }
  return sums.map((sum) => sum.map(Math.sqrt));
}

function knowledgeOf(model: Model): Knowledge {
  const inputs = inputsOf(model).filter(({ isMeasured }) => isMeasured);
  const sigmas = Float64Array.from(inputs, (input) => inputSigma(model, input) ?? 0);
  const ride = rideTravel(model.travel);
  const poses = [
    [ride, 0],
    [model.travel.bump, 0],
    [-model.travel.droop, 0],
  ] as const;
  const here = valuesAt(model, poses);
  const toe = MEASURE_KEYS.indexOf('toe');
  const columns = inputs.map((input) => {
    const value = inputValue(model, input);
    const h = 1e-3;
    const up = valuesAt(withInput(model, input, value + h), poses);
    const down = valuesAt(withInput(model, input, value - h), poses);
    return poses.map((_, p) => Float64Array.from(up[p]!, (v, k) => (v - down[p]![k]!) / (2 * h)));
  });
  const answer = (value: number, slope: (column: Float64Array[]) => number): Answer => {
    const slopes = Float64Array.from(columns, slope);
    const uncertainty = Math.hypot(...slopes.map((one, i) => one * sigmas[i]!));
    return { value, slopes, uncertainty };
  };
  const answers = Object.fromEntries(
    [
      ...MEASURE_KEYS.map((key, k): [AnswerKey, Answer] => [
        key,
        answer(here[0]![k]!, (column) => column[0]![k]!),
      ]),
      ...(['toeToBump', 'toeToDroop'] as const).map((key, i): [AnswerKey, Answer] => [
        key,
        answer(
          here[i + 1]![toe]! - here[0]![toe]!,
          (column) => column[i + 1]![toe]! - column[0]![toe]!,
        ),
      ]),
    ].filter(([, { value }]) => Number.isFinite(value)),
  );
  return { inputs, sigmas, answers };
}

export function createSpreadRunner(
  answer: (answer: SpreadAnswer) => void,
  later: (run: () => void) => void,
): Runner<SpreadRequest> {
  const waiting = new Map<string, SpreadRequest>();

  function turn(): void {
    const [first] = waiting.values();
    if (first === undefined) return;
    waiting.delete(first.kind);
    const { kind, number, model, travel, rack } = first;
    if (kind === 'pose') {
      const [found] = spreadAt(model, [[travel, rack]]);
      const uncertainties = Object.fromEntries(
        KEYS.map((key, i): [MeasureKey | AxleKey, number] => [key, found![i]!]),
      );
      answer({ kind, number, uncertainties });
    } else if (kind === 'set') answer({ kind, number, knowledge: knowledgeOf(model) });
    else {
      const [least, most] = travelRange(model);
      const axis = Float64Array.from(
        { length: LINE },
        (_, i) => least + ((most - least) * i) / (LINE - 1),
      );
      const found = spreadAt(
        model,
        Array.from(axis, (t) => [t, rack] as const),
      );
      const columns = Object.fromEntries(
        MEASURE_KEYS.map((key, k) => [key, Float64Array.from(found, (row) => row[k]!)]),
      );
      answer({ kind, number, spread: { model, along: 'travel', at: rack, axis, columns } });
    }
    if (waiting.size > 0) later(turn);
  }

  return {
    ask(request) {
      waiting.set(request.kind, request);
      later(turn);
    },
  };
}
