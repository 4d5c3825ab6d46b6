/** What no answer may break. */
import { useStore } from 'zustand';
import type { Stay } from '../../../solver/improve/plan.ts';
import { stayAt } from '../../../solver/improve/read.ts';
import { nearEnough } from '../../../solver/improve/usual.ts';
import { MEASURE_TABLE, type MeasureKey, measureRow, missingParts } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import { improvePlan } from '../../state/improved.ts';
import type { PlanRows, Row } from '../../state/improvePlan.ts';
import { quantityOf } from '../../words/quantity.ts';
import { AddChoice } from './AddChoice.tsx';
import { HeightChoice } from './HeightChoice.tsx';
import { PlanField } from './PlanField.tsx';
import { RowHead } from './RowHead.tsx';
import type { Design } from './useDesign.ts';
import { stayWords } from './words.ts';

type Switch = keyof PlanRows['holds'];

function HoldSwitch({ name, words }: { readonly name: Switch; readonly words: string }) {
  const isOn = useStore(improvePlan, (state) => state.holds[name]);
  return (
    <label className="plan-switch">
      <input
        type="checkbox"
        checked={isOn}
        onChange={(event) => improvePlan.hold({ [name]: event.target.checked })}
      />
      {words}
    </label>
  );
}

function StayRow({ row, design }: { readonly row: Row<Stay>; readonly design: Design }) {
  const unit = useStore(view, (state) => state.unit);
  const { id, of } = row;
  const title = stayWords(of, unit);
  const quantity = quantityOf(measureRow(of.measure).kind, unit);
  const now = stayAt(design.corner, of);
  return (
    <li className="plan-row">
      <RowHead title={title} onRemove={() => improvePlan.remove('stays', id)}>
        {Number.isNaN(now) ? '' : `now ${quantity.figure(now)}`}
      </RowHead>
      <div className="plan-fields">
        at
        <HeightChoice
          name={`${id}.travel`}
          label={`${title}: height`}
          height={of.height}
          design={design}
          onTake={(height) => improvePlan.changeStay(id, { height })}
        />
        stays, give or take
        <PlanField
          name={`${id}.within`}
          label={`${title}: may change by`}
          value={of.within}
          quantity={quantity}
          isPositive
          onTake={(within) => improvePlan.changeStay(id, { within })}
        />
      </div>
      {Number.isNaN(now) && <p className="plan-doubt">This design has no such figure: left out.</p>}
    </li>
  );
}

export function HoldList({ design }: { readonly design: Design }) {
  const rows = useStore(improvePlan, (state) => state.stays);
  const choices = MEASURE_TABLE.filter(
    (row) => row.group !== 'steering' && missingParts(design.model, row).length === 0,
  ).map(({ key, label }): [string, string] => [key, label]);
  const add = (value: string): void => {
    const measure = value as MeasureKey;
    improvePlan.addStay({ measure, height: 'ride', lock: 'straight', within: nearEnough(measure) });
  };
  return (
    <section className="plan-part" aria-labelledby="plan-holds">
      <h3 id="plan-holds">Must hold</h3>
      <p className="plan-note">
        Always: the bounds above, and that the corner can be built over its whole travel and lock.
      </p>
      <HoldSwitch name="limits" words="Every limit that the model states" />
      <HoldSwitch name="gaps" words="Every gap as wanted, over travel and lock" />
      <HoldSwitch name="broken" words="What is broken already gets no worse" />
      <ul className="plan-list">
        {rows.map((row) => (
          <StayRow key={row.id} row={row} design={design} />
        ))}
      </ul>
      <AddChoice
        label="Add what stays as it is"
        groups={[{ label: 'Measures', choices }]}
        onAdd={add}
      />
    </section>
  );
}
