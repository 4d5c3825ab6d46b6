/** What is wanted. */
import { useStore } from 'zustand';
import type { Wish } from '../../../solver/improve/plan.ts';
import { measureAt } from '../../../solver/improve/read.ts';
import { NEAR_ENOUGH_LEAST, nearEnough } from '../../../solver/improve/usual.ts';
import {
  type AxleKey,
  MEASURE_TABLE,
  type MeasureGroup,
  type MeasureKey,
  missingParts,
} from '../../../solver/index.ts';
import { improvePlan } from '../../state/improved.ts';
import { AddChoice, type ChoiceGroup } from './AddChoice.tsx';
import type { Design } from './useDesign.ts';
import { WishRow } from './WishRow.tsx';

const GROUPS: readonly (readonly [MeasureGroup, string])[] = [
  ['alignment', 'Alignment'],
  ['steeringAxis', 'Steering axis'],
  ['bump', 'As the wheel rises'],
  ['centres', 'Centres and anti-dive'],
  ['springing', 'Springing'],
  ['steering', 'Steering'],
  ['halfShaft', 'Half-shaft'],
  ['joints', 'Joints'],
];

/** Measures whose change over travel people ask for. */
const CHANGES: readonly MeasureKey[] = [
  'camber',
  'caster',
  'halfTrack',
  'rollCentreHeight',
  'motionRatio',
];

/** Locks at which a measure is first asked for: some are nothing straight ahead. */
const AT_LOCK: ReadonlySet<string> = new Set([
  'steerAngle',
  'innerSteer',
  'outerSteer',
  'ackermann',
  'turningCircle',
]);

function measureGroups({ model }: Design): ChoiceGroup[] {
  return GROUPS.flatMap(([group, label]): ChoiceGroup[] => {
    const rows = MEASURE_TABLE.filter(
      (row) => row.group === group && missingParts(model, row).length === 0,
    );
    const choices = rows.map((row): [string, string] => [`measure ${row.key}`, row.label]);
    return choices.length === 0 ? [] : [{ label, choices }];
  });
}

function changeGroup({ model }: Design): ChoiceGroup {
  const rows = MEASURE_TABLE.filter(({ key }) => (CHANGES as readonly string[]).includes(key));
  const known = rows.filter((row) => missingParts(model, row).length === 0);
  return {
    label: 'Change over travel',
    choices: [
      ['toeChange', 'toe change from ride, over a stretch of travel'],
      ...known.map((row): [string, string] => [`change ${row.key}`, `${row.label}’s change`]),
    ],
  };
}

function leastGroups({ margins }: Design): ChoiceGroup[] {
  const own = margins.filter(
    ({ kind }) => kind !== 'linkage' && kind !== 'stop' && kind !== 'steering',
  );
  const choicesOf = (isPair: boolean): [string, string][] =>
    own
      .filter(({ pair }) => (pair !== null) === isPair)
      .map(({ key, label }) => [`least ${key}`, label]);
  return [
    { label: 'Least gap of a pair', choices: choicesOf(true) },
    { label: 'Least left of a limit', choices: choicesOf(false) },
  ].filter(({ choices }) => choices.length > 0);
}

/** Rounded to a figure that somebody might have typed. */
function tidy(value: number): number {
  if (!Number.isFinite(value)) return 0;
  const step = 10 ** (Math.floor(Math.log10(Math.max(Math.abs(value), 1e-6))) - 2);
  return Number((Math.round(value / step) * step).toPrecision(3));
}

function added({ corner, margins }: Design, value: string): Wish {
  const [of, key = ''] = value.split(/ (.*)/s);
  const matters = 1;
  if (of === 'toeChange') {
    return { of, from: 'droop', to: 'bump', value: 0, within: nearEnough('toe'), matters };
  }
  if (of === 'least') {
    const wanted = margins.find((margin) => margin.key === key)?.near ?? 0;
    return { of, key, value: wanted, within: NEAR_ENOUGH_LEAST, matters };
  }
  const aiming = 'exactly';
  if (of === 'change') {
    const measure = key as MeasureKey;
    const now =
      measureAt(corner, measure, 'bump', 'straight') -
      measureAt(corner, measure, 'ride', 'straight');
    const within = nearEnough(measure);
    return { of, measure, height: 'bump', aiming, value: tidy(now), within, matters };
  }
  const measure = key as MeasureKey | AxleKey;
  const lock = AT_LOCK.has(measure) ? 'left' : 'straight';
  const now = measureAt(corner, measure, 'ride', lock);
  const within = nearEnough(measure);
  return {
    of: 'measure',
    measure,
    height: 'ride',
    lock,
    aiming,
    value: tidy(now),
    within,
    matters,
  };
}

export function WishList({ design }: { readonly design: Design }) {
  const rows = useStore(improvePlan, (state) => state.wishes);
  const groups = [changeGroup(design), ...measureGroups(design), ...leastGroups(design)];
  return (
    <section className="plan-part" aria-labelledby="plan-wishes">
      <h3 id="plan-wishes">Wanted</h3>
      <ul className="plan-list">
        {rows.map((row) => (
          <WishRow key={row.id} row={row} design={design} />
        ))}
      </ul>
      <AddChoice
        label="Add what is wanted"
        groups={groups}
        onAdd={(value) => improvePlan.addWish(added(design, value))}
      />
    </section>
  );
}
