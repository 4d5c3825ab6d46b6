/** One number of a field: a text to type into and a slider under it. */
import { type KeyboardEvent, useRef } from 'react';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength, enteredNumber } from '../../words/entry.ts';
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

export function Cell(props: CellProps) {
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
