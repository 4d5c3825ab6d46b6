/** Ready-made plans for a design: what people ask for most. Bounds and wanted values are common practice, no source. */
import { watchedPairs } from '../clearance/pairs.ts';
import type { Corner } from '../corner.ts';
import type { AxleKey } from '../measures/axle.ts';
import type { MeasureKey } from '../measures/keys.ts';
import type { Model } from '../model/model.ts';
import { dimensionOf, dimensionValue } from './dimension.ts';
import type { Height, Lock, Mover, Plan, Stay, Wish } from './plan.ts';
import { measureAt } from './read.ts';

export interface Starter {
  readonly key: string;
  /** "Less toe change: move the rack end". */
  readonly label: string;
  readonly plan: Plan;
}

/** Movers of dimensions that go together, from `by` below where they are to as much above. */
export function moverAround(model: Model, inputs: readonly string[], by: number): Mover {
  const lead = dimensionOf(model, inputs[0] ?? '');
  const value = lead === undefined ? 0 : dimensionValue(model, lead);
  const tidy = (each: number): number => Number(each.toFixed(2));
  return { inputs, from: tidy(value - by), to: tidy(value + by) };
}

const TOE: Wish = {
  of: 'toeChange',
  from: 'droop',
  to: 'bump',
  value: 0,
  within: 0.05,
  matters: 1,
};

const UPPER_HEIGHT = ['upperArm.frontPivot.z', 'upperArm.rearPivot.z'] as const;

interface Given {
  readonly corner: Corner;
  readonly model: Model;
  readonly now: (key: MeasureKey | AxleKey, height?: Height, lock?: Lock) => number;
}

function measured(
  measure: MeasureKey | AxleKey,
  value: number,
  within: number,
  lock: Lock = 'straight',
): Wish {
  return {
    of: 'measure',
    measure,
    height: 'ride',
    lock,
    aiming: 'exactly',
    value,
    within,
    matters: 1,
  };
}

function stays(measure: MeasureKey, within: number): Stay {
  return { measure, height: 'ride', lock: 'straight', within };
}

function starter(
  key: string,
  label: string,
  movers: readonly Mover[],
  wishes: readonly Wish[],
  kept: readonly Stay[] = [],
): Starter {
  const holds = { limits: true, gaps: true, broken: false, stays: kept };
  return { key, label, plan: { movers, wishes, holds } };
}

function rodStarters({ model, corner }: Given): Starter[] {
  const at = (key: string, by: number): Mover => moverAround(model, [key], by);
  const pair = watchedPairs(corner).find(({ names }) => names.join('/') === 'tieRod/wheel');
  const clear: Starter[] =
    pair === undefined
      ? []
      : [
          starter(
            'rodClear',
            'Tie rod clear of the wheel: move the outer end',
            [at('tieRod.outer.x', 15), at('tieRod.outer.y', 15), at('tieRod.outer.z', 25)],
            [
              { of: 'least', key: 'tieRod/wheel', value: pair.required, within: 1, matters: 10 },
              TOE,
            ],
          ),
        ];
  return [
    starter(
      'rackEnd',
      'Less toe change: move the rack end',
      [at('tieRod.inner.y', 15), at('tieRod.inner.z', 15)],
      [TOE],
    ),
    starter('outerEnd', 'Less toe change: outer end up or down', [at('tieRod.outer.z', 25)], [TOE]),
    ...clear,
  ];
}

function armStarters({ model, now }: Given): Starter[] {
  const half = (height: 'bump' | 'droop'): Wish => {
    const change = now('camber', height) - now('camber');
    const value = Number((change / 2).toFixed(2));
    return {
      of: 'change',
      measure: 'camber',
      height,
      aiming: 'exactly',
      value,
      within: 0.25,
      matters: 1,
    };
  };
  const upper = moverAround(model, UPPER_HEIGHT, 20);
  const rack = moverAround(model, ['tieRod.inner.z'], 15);
  const higher = Number((now('rollCentreHeight') + 20).toFixed(1));
  return [
    starter(
      'camber',
      'Half the camber change: upper pivots up or down',
      [upper, moverAround(model, ['upperArm.frontPivot.y', 'upperArm.rearPivot.y'], 20), rack],
      [half('bump'), half('droop'), TOE],
    ),
    starter(
      'caster',
      'One degree more caster: upper ball joint back',
      [moverAround(model, ['upperArm.ballJoint.x'], 25), rack],
      [measured('caster', Number((now('caster') + 1).toFixed(2)), 0.1), TOE],
      [stays('kingpinInclination', 0.5)],
    ),
    starter(
      'rollCentre',
      'Roll centre 20 mm higher: arms’ pivots',
      [upper, moverAround(model, ['lowerArm.frontPivot.z', 'lowerArm.rearPivot.z'], 15), rack],
      [measured('rollCentreHeight', higher, 5), TOE],
    ),
  ];
}

function fittedStarters({ model, now }: Given): Starter[] {
  const { coilover, vehicle, steering } = model;
  const at = (key: string, by: number): Mover => moverAround(model, [key], by);
  const ratio = Number((now('motionRatio') + 0.05).toFixed(3));
  const ackermann = Number((now('ackermann', 'ride', 'left') + 20).toFixed(0));
  return [
    ...(vehicle === undefined
      ? []
      : [
          starter(
            'antiDive',
            'Anti-dive of 25 %: tilt the upper arm',
            [
              at('upperArm.frontPivot.z', 25),
              at('upperArm.rearPivot.z', 25),
              at('tieRod.inner.z', 15),
            ],
            [measured('antiDive', 25, 2), TOE],
          ),
        ]),
    ...(vehicle === undefined || steering?.limit === undefined || !Number.isFinite(ackermann)
      ? []
      : [
          starter(
            'ackermann',
            'More Ackermann: move the outer end',
            [at('tieRod.outer.x', 15), at('tieRod.outer.y', 15), at('tieRod.inner.x', 25)],
            [measured('ackermann', ackermann, 5, 'left'), TOE],
          ),
        ]),
    ...(coilover === undefined
      ? []
      : [
          starter(
            'motionRatio',
            'Motion ratio 0.05 more: coilover’s lower mount',
            [at('coilover.bottom.y', 40), at('coilover.bottom.z', 20)],
            [measured('motionRatio', ratio, 0.005)],
          ),
        ]),
  ];
}

/** The ready-made plans that a design has the parts for. */
export function startersOf(corner: Corner): readonly Starter[] {
  const { model } = corner;
  const now = (key: MeasureKey | AxleKey, height: Height = 'ride', lock: Lock = 'straight') =>
    measureAt(corner, key, height, lock);
  const given = { corner, model, now };
  return [...rodStarters(given), ...armStarters(given), ...fittedStarters(given)].filter(
    ({ plan }) => plan.wishes.every(({ value }) => Number.isFinite(value)),
  );
}
