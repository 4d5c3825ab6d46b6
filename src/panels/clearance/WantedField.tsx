/** The least gap wanted of a pair: typed here, kept in the model. */
import type { PairResult } from '../../../solver/certify/result.ts';
import type { Model } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength } from '../../words/entry.ts';
import { lengthNumber, lengthUnitName } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { useEntry } from '../points/useEntry.ts';

/** The model with that gap wanted of the pair, under whichever order of names it already states. */
export function withWanted(model: Model, [a, b]: readonly [string, string], mm: number): Model {
  const stated = model.required ?? {};
  const key = `${b}/${a}` in stated ? `${b}/${a}` : `${a}/${b}`;
  return { ...model, required: { ...stated, [key]: mm } };
}

export function WantedField({
  result,
  unit,
  title,
}: {
  readonly result: PairResult;
  readonly unit: LengthUnit;
  readonly title: string;
}) {
  const take = (text: string): string | null => {
    const entered = enteredLength(text, unit);
    if (!entered.ok) return entered.why;
    return editModel((model) => withWanted(model, result.names, entered.value));
  };
  const { input, refusal, refusalId } = useEntry(lengthNumber(result.required, unit), take);
  return (
    <>
      <span className="clearance-wanted">
        <input
          {...input}
          inputMode="decimal"
          aria-label={`Gap wanted: ${title}, ${lengthUnitName(unit)}`}
        />
        {lengthUnitName(unit)}
      </span>
      {refusal !== null && (
        <span id={refusalId} role="alert" className="clearance-refusal">
          {refusal}
        </span>
      )}
    </>
  );
}
