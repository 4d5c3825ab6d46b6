/** The least gap wanted of a pair: typed here, kept in the model. */
import { useId, useState } from 'react';
import type { PairResult } from '../../../solver/certify/result.ts';
import type { Model } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength } from '../../words/entry.ts';
import { lengthNumber, lengthUnitName } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { useDraft } from '../points/useDraft.ts';

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
  const id = useId();
  const [refusal, setRefusal] = useState<string | null>(null);
  const take = (text: string): boolean => {
    const entered = enteredLength(text, unit);
    if (!entered.ok) {
      setRefusal(entered.why);
      return false;
    }
    const why = editModel((model) => withWanted(model, result.names, entered.value));
    setRefusal(why);
    return why === null;
  };
  const draft = useDraft(lengthNumber(result.required, unit), take, () => setRefusal(null));
  return (
    <>
      <span className="clearance-wanted">
        <input
          type="text"
          inputMode="decimal"
          aria-label={`Gap wanted: ${title}, ${lengthUnitName(unit)}`}
          aria-invalid={refusal !== null || undefined}
          aria-describedby={refusal === null ? undefined : id}
          value={draft.text}
          onChange={(event) => draft.type(event.target.value)}
          onBlur={draft.enter}
          onKeyDown={draft.onKeyDown}
        />
        {lengthUnitName(unit)}
      </span>
      {refusal !== null && (
        <span id={id} role="alert" className="clearance-refusal">
          {refusal}
        </span>
      )}
    </>
  );
}
