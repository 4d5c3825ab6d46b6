/** From one setting to another with two wrenches: what is turned, which way, by how many marks, shims and flats. */
import type { Model } from '../model/model.ts';
import { radians } from '../units.ts';
import type { WorkStep } from './alignment.ts';
import { type Fitting, fittingsOf, type Settings } from './hardware.ts';

const WAYS = [
  ['rearward', 'forward'],
  ['inboard', 'outboard'],
  ['down', 'up'],
] as const;

/** Shift of a pivot along its direction at a setting, mm. */
function shiftAt({ kind, reach }: Fitting, setting: number): number {
  return kind === 'cam' ? reach * Math.sin(radians(setting)) : setting;
}

/** Which way the pivot goes, by the greatest part of its shift. */
function pivotSense(fitting: Fitting, from: number, to: number): WorkStep['sense'] {
  const by = shiftAt(fitting, to) - shiftAt(fitting, from);
  const sizes = fitting.direction.map(Math.abs);
  const axis = sizes.indexOf(Math.max(...sizes)) as 0 | 1 | 2;
  if (by === 0) return null;
  return WAYS[axis][fitting.direction[axis] * by > 0 ? 1 : 0];
}

function rodStep({ tieRod }: Model, from: number, to: number, whole: number): WorkStep {
  const { flats } = tieRod;
  const sense = to === from ? null : to > from ? 'longer' : 'shorter';
  return {
    at: 'tieRod',
    from,
    to,
    whole,
    unit: flats === undefined ? null : 'flat',
    exactCount: flats === undefined ? 0 : (to - from) * flats,
    count: flats === undefined ? 0 : Math.round((whole - from) * flats),
    sense,
  };
}

/** The order of work from the settings now to those wanted; `rounded` tells the whole counts. */
export function workBetween(
  model: Model,
  now: Settings,
  wanted: Settings,
  rounded: Settings,
): readonly WorkStep[] {
  const pivots = fittingsOf(model).map((fitting): WorkStep => {
    const { name, step } = fitting;
    const [from, to] = [now[name] ?? 0, wanted[name] ?? 0];
    return {
      at: name,
      from,
      to,
      whole: rounded[name] ?? 0,
      unit: step === null ? null : fitting.kind === 'cam' ? 'mark' : 'shim',
      exactCount: step === null ? 0 : (to - from) / step,
      count: step === null ? 0 : Math.round(((rounded[name] ?? 0) - from) / step),
      sense: pivotSense(fitting, from, to),
    };
  });
  if (model.tieRod.pitch === undefined) return pivots;
  const rod = rodStep(model, now.tieRodTurns, wanted.tieRodTurns, rounded.tieRodTurns);
  return [...pivots, rod];
}
