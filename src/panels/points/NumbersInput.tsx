/** Leva input of one to three numbers: each a text field and a slider, refused edits said underneath. */
import { createPlugin, useInputContext } from 'leva/plugin';
import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength, enteredNumber } from '../../words/entry.ts';
import { editModel } from './edit.ts';
import type { NumbersField } from './fields.ts';
import { Refused } from './Refused.tsx';
import { fromSlide, shownStep, shownText, sixteenth, slideOf, toSlide, unitName } from './shown.ts';
import type { RowSpec } from './spec.ts';
import { useDraft } from './useDraft.ts';

interface CellProps {
  readonly id: string;
  readonly name: string;
  readonly cell: RowSpec['cells'][number];
  readonly value: number;
  readonly unit: LengthUnit;
  readonly messageId: string | undefined;
  /** Answers whether the number was taken. */
  readonly onNumber: (value: number) => boolean;
  readonly onMessage: (message: string | null) => void;
  readonly onGesture: (isOpen: boolean) => void;
}

/** Place of a slider about its value: it stays put while the value moves inside it. */
function useAbout(value: number, reach: number): number {
  const about = useRef(Math.round(value));
  if (Math.abs(value - about.current) > reach) about.current = Math.round(value);
  return about.current;
}

function Slider({ cell, name, value, unit, onNumber, onGesture }: Omit<CellProps, 'messageId'>) {
  const { spec } = cell;
  const about = useAbout(value, spec.most);
  const { min, max, step } = slideOf(value, about, spec, unit);
  const isHeld = useRef(false);
  const hold = (isOpen: boolean): void => {
    if (isHeld.current === isOpen) return;
    isHeld.current = isOpen;
    onGesture(isOpen);
  };
  const end = () => hold(false);
  return (
    <input
      type="range"
      className="points-slider"
      aria-label={`${name}, slider`}
      min={min}
      max={max}
      step={step}
      value={toSlide(value, spec, unit)}
      onPointerDown={() => hold(true)}
      onKeyDown={(event) => hold(event.key !== 'Tab' && !event.ctrlKey && !event.metaKey)}
      onChange={(event) => onNumber(fromSlide(event.target.valueAsNumber, spec, unit))}
      onPointerUp={end}
      onPointerCancel={end}
      onLostPointerCapture={end}
      onKeyUp={end}
      onBlur={end}
    />
  );
}

function Cell(props: CellProps) {
  const { id, cell, name, value, unit, messageId, onNumber, onMessage, onGesture } = props;
  const { spec } = cell;
  const stepping = useRef(false);
  const draft = useDraft(
    shownText(value, spec, unit),
    (text) => {
      const entered = spec.kind === 'length' ? enteredLength(text, unit) : enteredNumber(text);
      if (!entered.ok) onMessage(entered.why);
      return entered.ok && onNumber(entered.value);
    },
    () => onMessage(null),
  );

  function endStep(): void {
    if (stepping.current) onGesture(false);
    stepping.current = false;
  }

  /** Arrow keys step; Shift ten steps at once, Alt a tenth. A key held down is one gesture. */
  function step(event: KeyboardEvent): void {
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (way === undefined) {
      draft.onKeyDown(event);
      return;
    }
    event.preventDefault();
    if (!stepping.current) onGesture(true);
    stepping.current = true;
    const size = shownStep(spec, unit) * (event.shiftKey ? 10 : event.altKey ? 0.1 : 1);
    draft.drop();
    onNumber(fromSlide(toSlide(value, spec, unit) + way * size, spec, unit));
  }

  const fraction = sixteenth(value, spec, unit);
  return (
    <div className="points-cell">
      <div className="points-number">
        {cell.name !== '' && (
          <span title={cell.title} aria-hidden="true">
            {cell.name}
          </span>
        )}
        <input
          id={id}
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          aria-label={name}
          aria-invalid={messageId !== undefined && draft.isOpen}
          aria-describedby={messageId}
          data-draft={draft.isOpen || undefined}
          value={draft.text}
          onChange={(event) => draft.type(event.target.value)}
          onKeyDown={step}
          onKeyUp={endStep}
          onBlur={() => {
            endStep();
            draft.enter();
          }}
        />
        {cell.name === '' && <span aria-hidden="true">{unitName(spec, unit)}</span>}
      </div>
      {fraction !== null && <div className="points-fraction">{`≈ ${fraction}`}</div>}
      <Slider {...props} />
    </div>
  );
}

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
    });
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
      <label htmlFor={`${id}0`}>{field.label}</label>
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
