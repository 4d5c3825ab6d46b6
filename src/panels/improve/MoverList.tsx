/** What may move, and within which bounds. */
import { useStore } from 'zustand';
import {
  type Dimension,
  dimensionOf,
  dimensionsOf,
  dimensionValue,
  withDimension,
} from '../../../solver/improve/dimension.ts';
import type { Mover } from '../../../solver/improve/plan.ts';
import { moverAround } from '../../../solver/improve/starters.ts';
import { type Model, readModel } from '../../../solver/index.ts';
import type { InputGroup } from '../../../solver/inputs/input.ts';
import { view } from '../../state/bench.ts';
import { improvePlan } from '../../state/improved.ts';
import type { Row } from '../../state/improvePlan.ts';
import { quantityOf } from '../../words/quantity.ts';
import { AddChoice, type ChoiceGroup } from './AddChoice.tsx';
import { PlanField } from './PlanField.tsx';
import { RowHead } from './RowHead.tsx';
import { moverKind, moverWords } from './words.ts';

/** How far a number may move to either side at first: mm, degrees. Common practice, no source. */
const ROOM = { mm: 15, degree: 1 } as const;

const PARTS: readonly (readonly [InputGroup, string])[] = [
  ['tieRod', 'Tie rod'],
  ['upperArm', 'Upper arm'],
  ['lowerArm', 'Lower arm'],
  ['hub', 'Hub'],
  ['wheel', 'Wheel'],
  ['coilover', 'Coilover'],
  ['antiRollBar', 'Anti-roll bar'],
  ['halfShaft', 'Half-shaft'],
  ['strap', 'Strap'],
  ['knuckle', 'Knuckle'],
];

function bothPivots(group: InputGroup): string[] {
  if (group !== 'upperArm' && group !== 'lowerArm') return [];
  return ['x', 'y', 'z'].map((axis) => `${group}.frontPivot.${axis} ${group}.rearPivot.${axis}`);
}

/** What can be added: every coordinate, length and angle of the moving parts that is not on the list yet. */
function groupsOf(model: Model, rows: readonly Row<Mover>[]): readonly ChoiceGroup[] {
  const taken = new Set(rows.map(({ of }) => of.inputs.join(' ')));
  const all = dimensionsOf(model);
  return PARTS.flatMap(([group, label]): ChoiceGroup[] => {
    const single = all.filter((dimension) => dimension.group === group).map(({ key }) => key);
    const choices = [...bothPivots(group), ...single]
      .filter((value) => !taken.has(value))
      .map((value): [string, string] => {
        const words = moverWords(model, { inputs: value.split(' '), from: 0, to: 0 }) ?? value;
        return [value, words];
      });
    return choices.length === 0 ? [] : [{ label, choices }];
  });
}

function added(model: Model, value: string): Mover {
  const inputs = value.split(' ');
  const lead = dimensionOf(model, inputs[0] ?? '');
  const mover = moverAround(model, inputs, lead?.unit === 'degree' ? ROOM.degree : ROOM.mm);
  // A spacer cannot be thinner than none: a bound that no sound design has is where it is now.
  const bound = (end: number): number =>
    lead === undefined || readModel(withDimension(model, lead, end), '').ok
      ? end
      : dimensionValue(model, lead);
  return { ...mover, from: bound(mover.from), to: bound(mover.to) };
}

/** What stands against the bounds as they are. */
function doubtOf({ from, to }: Mover, now: number): string | null {
  if (from === to) return 'Both bounds are the same: it cannot move.';
  if (now < Math.min(from, to) || now > Math.max(from, to)) {
    return 'It now stands outside of these bounds: the search begins at the nearer one.';
  }
  return null;
}

function MoverRow({ row, model, lead }: { row: Row<Mover>; model: Model; lead: Dimension }) {
  const unit = useStore(view, (state) => state.unit);
  const { id, of } = row;
  const quantity = quantityOf(moverKind(model, of), unit);
  const title = moverWords(model, of) ?? of.inputs.join(', ');
  const now = dimensionValue(model, lead);
  const doubt = doubtOf(of, now);
  return (
    <li className="plan-row">
      <RowHead title={title} onRemove={() => improvePlan.remove('movers', id)}>
        now {quantity.figure(now)}
      </RowHead>
      <div className="plan-fields">
        from
        <PlanField
          name={`${id}.from`}
          label={`${title}: from`}
          value={of.from}
          quantity={quantity}
          onTake={(from) => improvePlan.changeMover(id, { from })}
        />
        to
        <PlanField
          name={`${id}.to`}
          label={`${title}: to`}
          value={of.to}
          quantity={quantity}
          onTake={(to) => improvePlan.changeMover(id, { to })}
        />
        <small>more is {lead.ways[0]}</small>
      </div>
      {doubt !== null && (
        <p className="plan-doubt">
          {doubt}{' '}
          <button
            type="button"
            className="plan-link"
            onClick={() => improvePlan.changeMover(id, added(model, of.inputs.join(' ')))}
          >
            Set the bounds about where it is
          </button>
        </p>
      )}
    </li>
  );
}

function LostRow({ row }: { row: Row<Mover> }) {
  return (
    <li className="plan-row">
      <RowHead
        title={row.of.inputs.join(', ')}
        onRemove={() => improvePlan.remove('movers', row.id)}
      />
      <p className="plan-doubt">This design has no such point: left out.</p>
    </li>
  );
}

export function MoverList({ model }: { readonly model: Model }) {
  const rows = useStore(improvePlan, (state) => state.movers);
  return (
    <section className="plan-part" aria-labelledby="plan-movers">
      <h3 id="plan-movers">May move</h3>
      <ul className="plan-list">
        {rows.map((row) => {
          const lead = dimensionOf(model, row.of.inputs[0] ?? '');
          return lead === undefined || moverWords(model, row.of) === null ? (
            <LostRow key={row.id} row={row} />
          ) : (
            <MoverRow key={row.id} row={row} model={model} lead={lead} />
          );
        })}
      </ul>
      <AddChoice
        label="Add what may move"
        groups={groupsOf(model, rows)}
        onAdd={(value) => improvePlan.addMover(added(model, value))}
      />
    </section>
  );
}
