/** Leva input of one to three numbers: each a text field and a slider, refused edits said underneath. */
import { createPlugin, useInputContext } from 'leva/plugin';
import { useId, useState } from 'react';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { Cell } from './Cell.tsx';
import { editModel } from './edit.ts';
import type { NumbersField } from './field.ts';
import { PointSpread } from './PointSpread.tsx';
import { Refused } from './Refused.tsx';

interface Settings {
  readonly field: NumbersField;
  readonly section: string;
}

interface Context {
  readonly value: readonly number[];
  readonly settings: Settings;
  readonly onUpdate: (value: readonly number[]) => void;
  readonly emitOnEditStart: () => void;
  readonly emitOnEditEnd: () => void;
}

function NumbersInput() {
  const { value, settings, onUpdate, emitOnEditStart, emitOnEditEnd } =
    useInputContext() as unknown as Context;
  const { field, section } = settings;
  const unit = useStore(view, (state) => state.unit);
  const [message, setMessage] = useState<string | null>(null);
  const id = useId();
  const messageId = message === null ? undefined : `${id}message`;

  function enter(index: number, number: number): boolean {
    let taken: readonly number[] = value;
    const refusal = editModel((model) => {
      taken = field.get(model).map((old, i) => (i === index ? number : old));
      return field.set(model, taken);
    }, field.path);
    setMessage(refusal);
    // The panel's own copy follows at once; every other change of the model reaches it in the next frame.
    if (refusal === null) onUpdate(taken);
    return refusal === null;
  }

  const light = (isLit: boolean): void => {
    if (field.isPoint) view.light(isLit ? `point:${field.path}` : null);
  };
  const { cells } = field.row;
  const isSingle = cells.length === 1;
  return (
    <fieldset
      aria-label={isSingle ? undefined : `${section}: ${field.label}`}
      className={isSingle ? 'points-row points-single' : 'points-row'}
      onPointerEnter={() => light(true)}
      onPointerLeave={() => light(false)}
      onFocus={() => light(true)}
      onBlur={() => light(false)}
    >
      <label htmlFor={`${id}0`}>
        {field.label}
        {field.isPoint && <PointSpread path={field.path} />}
      </label>
      <div className="points-cells" style={{ gridTemplateColumns: `repeat(${cells.length}, 1fr)` }}>
        {cells.map((cell, index) => (
          <Cell
            key={cell.name}
            id={`${id}${index}`}
            name={`${section}: ${field.label}${isSingle ? '' : `, ${cell.name}`}`}
            cell={cell}
            value={value[index] ?? 0}
            unit={unit}
            messageId={messageId}
            onNumber={(number) => enter(index, number)}
            onMessage={setMessage}
            onGesture={(isOpen) => (isOpen ? emitOnEditStart() : emitOnEditEnd())}
          />
        ))}
      </div>
      <Refused id={messageId} message={message} />
    </fieldset>
  );
}

/** What leva is given: not under the name `value`, which it would take for the whole input. */
interface Given extends Settings {
  readonly numbers: readonly number[];
}

export const numbersInput = createPlugin({
  component: NumbersInput,
  normalize: ({ numbers, ...settings }: Given) => ({ value: numbers, settings }),
});
