/** The ± of one path as a text to type into: emptied, the path goes back to what stands for all others. */
import type { MeasuredUnit } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { type Entered, enteredLength, enteredNumber } from '../../words/entry.ts';
import { lengthUnitName, toShown } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { useEntry } from '../points/useEntry.ts';
import { withStated } from './tolerances.ts';

export interface PlusMinusFieldProps {
  readonly path: string;
  readonly name: string;
  readonly of: MeasuredUnit;
  /** What the file states of the path itself; null: nothing. */
  readonly stated: number | null;
  /** What holds where it states nothing; null: nothing is known. */
  readonly otherwise: number | null;
  readonly unit: LengthUnit;
}

/** What stands behind a ±, but for a length's unit. */
const UNIT_NAMES: Readonly<Record<Exclude<MeasuredUnit, 'mm'>, string>> = {
  degree: '°',
  mmPerTurn: 'mm/turn',
  newton: 'N',
  newtonPerMm: 'N/mm',
  kilogram: 'kg',
  share: 'of 1',
};

/** No digits beyond what means something. */
function shownText(value: number | null, of: MeasuredUnit, unit: LengthUnit): string {
  if (value === null) return '';
  const shown = of === 'mm' ? toShown(value, unit) : value;
  return String(Number(shown.toFixed(3)));
}

function entered(text: string, of: MeasuredUnit, unit: LengthUnit): Entered {
  const bare = text.replace(/^\s*(?:±|\+-|\+\/-)/, '');
  const read = of === 'mm' ? enteredLength(bare, unit) : enteredNumber(bare);
  if (!read.ok || read.value >= 0) return read;
  return { ok: false, why: `“${text.trim()}” is below 0: a ± is 0 or more.` };
}

export function PlusMinusField(props: PlusMinusFieldProps) {
  const { path, name, of, stated, otherwise, unit } = props;
  function take(text: string): string | null {
    const read = text.trim() === '' ? null : entered(text, of, unit);
    if (read?.ok === false) return read.why;
    return editModel((model) => withStated(model, path, read === null ? null : read.value));
  }
  const { input, refusal, refusalId } = useEntry(shownText(stated, of, unit), take);
  return (
    <span className="trust-field">
      <span aria-hidden="true">±</span>
      <input
        {...input}
        inputMode="decimal"
        aria-label={`± of ${name}`}
        placeholder={shownText(otherwise, of, unit) || 'not stated'}
      />
      <span aria-hidden="true">{of === 'mm' ? lengthUnitName(unit) : UNIT_NAMES[of]}</span>
      {refusal !== null && (
        <span id={refusalId} role="alert" className="trust-refusal">
          {refusal}
        </span>
      )}
    </span>
  );
}
