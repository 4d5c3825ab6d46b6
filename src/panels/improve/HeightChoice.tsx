/** A height of the wheel: one of those with a name, or a travel of its own. */
import { useStore } from 'zustand';
import { travelAt } from '../../../solver/improve/places.ts';
import type { Height } from '../../../solver/improve/plan.ts';
import { view } from '../../state/bench.ts';
import { quantityOf } from '../../words/quantity.ts';
import { PlanField } from './PlanField.tsx';
import type { Design } from './useDesign.ts';
import { HEIGHT_WORDS } from './words.ts';

const NAMED = ['ride', 'bump', 'droop'] as const;

export function HeightChoice({
  name,
  label,
  height,
  design,
  onTake,
}: {
  readonly name: string;
  readonly label: string;
  readonly height: Height;
  readonly design: Design;
  readonly onTake: (height: Height) => void;
}) {
  const unit = useStore(view, (state) => state.unit);
  const take = (value: string): void => {
    const named = NAMED.find((each) => each === value);
    onTake(named ?? Math.round(travelAt(design.model, height)));
  };
  return (
    <>
      <select
        aria-label={label}
        value={typeof height === 'number' ? 'travel' : height}
        onChange={(event) => take(event.target.value)}
      >
        {NAMED.map((each) => (
          <option key={each} value={each}>
            {HEIGHT_WORDS[each]}
          </option>
        ))}
        <option value="travel">a travel of</option>
      </select>
      {typeof height === 'number' && (
        <PlanField
          name={name}
          label={`${label}, travel`}
          value={height}
          quantity={quantityOf('millimetre', unit)}
          onTake={onTake}
        />
      )}
    </>
  );
}
