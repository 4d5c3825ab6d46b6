/** A length that can be typed and slid: a figure, a thin slider, and words that say what the value means. */
import { type KeyboardEvent, useEffect, useId, useRef } from 'react';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import type { LengthUnit } from '../state/view.ts';
import { length, lengthNumber, lengthUnitName } from '../words/format.ts';
import { typedLength } from '../words/typed.ts';
import { keyStep } from './steps.ts';

export interface SlideSource {
  readonly label: string;
  /** Present value, mm. */
  readonly read: () => number;
  readonly write: (mm: number) => void;
  /** [least, greatest], mm. */
  readonly range: () => readonly [number, number];
  readonly words: (mm: number) => string;
  /** What is good to know about it, on hover. */
  readonly hint?: string;
  /** Around a drag of the slider or one press of a key on it. */
  readonly begin?: () => void;
  readonly end?: () => void;
  readonly cancel?: () => void;
}

interface Parts {
  readonly field: HTMLInputElement;
  readonly slider: HTMLInputElement;
  readonly words: HTMLElement;
}

/** Makes the frame callback that follows the source, and leaves a field alone while it is typed in. */
function createSlide({ field, slider, words }: Parts, source: SlideSource, unit: LengthUnit) {
  let shown = Number.NaN;
  let least = Number.NaN;
  let most = Number.NaN;
  return () => {
    const value = source.read();
    const range = source.range();
    if (range[0] !== least || range[1] !== most) {
      [least, most] = range;
      slider.min = String(least);
      slider.max = String(most);
      slider.disabled = least === most;
      shown = Number.NaN;
    }
    if (value === shown) return;
    shown = value;
    slider.value = String(value);
    const text = lengthNumber(value, unit);
    if (field.dataset['typing'] === undefined && field.value !== text) field.value = text;
    const said = source.words(value);
    if (words.textContent === said && slider.ariaValueText !== null) return;
    words.textContent = said;
    slider.ariaValueText = `${length(value, unit)}, ${said}`;
  };
}

function direction(key: string): number {
  if (key === 'ArrowUp' || key === 'ArrowRight') return 1;
  return key === 'ArrowDown' || key === 'ArrowLeft' ? -1 : 0;
}

/** Keys of the slider: the bench's own steps, and the ends of the range. */
function slideByKey(event: KeyboardEvent<HTMLElement>, source: SlideSource, unit: LengthUnit) {
  if (event.key === 'Escape') {
    source.cancel?.();
    return;
  }
  const [least, most] = source.range();
  const way = direction(event.key);
  let wanted = source.read() + way * keyStep(event, unit);
  if (event.key === 'Home') wanted = least;
  else if (event.key === 'End') wanted = most;
  else if (way === 0) return;
  event.preventDefault();
  source.begin?.();
  source.write(Math.min(most, Math.max(least, wanted)));
  source.end?.();
}

/** Takes what was typed; text that is no length is put back as it was. */
function takeTyped(field: HTMLInputElement, source: SlideSource, unit: LengthUnit): void {
  const mm = field.dataset['typing'] === undefined ? null : typedLength(field.value, unit);
  delete field.dataset['typing'];
  if (mm !== null) source.write(mm);
  field.value = lengthNumber(source.read(), unit);
}

function Field({ id, source, unit }: { id: string; source: SlideSource; unit: LengthUnit }) {
  return (
    <span className="slide-field">
      <input
        id={id}
        className="slide-figure"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        onInput={(event) => {
          event.currentTarget.dataset['typing'] = '';
        }}
        onFocus={(event) => event.currentTarget.select()}
        onBlur={(event) => takeTyped(event.currentTarget, source, unit)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' && event.key !== 'Escape') return;
          if (event.key === 'Escape') delete event.currentTarget.dataset['typing'];
          // Leaving takes what was typed and gives the keys back to the bench.
          event.currentTarget.blur();
        }}
      />
      <span aria-hidden="true">{lengthUnitName(unit)}</span>
    </span>
  );
}

/** `source` must stay the same object. */
export function Slide({ source }: { source: SlideSource }) {
  const root = useRef<HTMLDivElement>(null);
  const id = useId();
  const unit = useStore(view, (state) => state.unit);
  useEffect(() => {
    const [field, slider] = root.current?.querySelectorAll('input') ?? [];
    const words = root.current?.querySelector<HTMLElement>('.slide-words');
    if (field === undefined || slider === undefined || !words) return undefined;
    return onFrame(createSlide({ field, slider, words }, source, unit));
  }, [source, unit]);
  return (
    <div ref={root} className="slide" title={source.hint}>
      <label className="slide-label" htmlFor={id}>
        {source.label}
      </label>
      <Field id={id} source={source} unit={unit} />
      <input
        type="range"
        className="slide-slider"
        aria-label={`${source.label} slider`}
        step="any"
        onPointerDown={() => source.begin?.()}
        onInput={(event) => source.write(event.currentTarget.valueAsNumber)}
        onPointerUp={() => source.end?.()}
        onPointerCancel={() => source.cancel?.()}
        onKeyDown={(event) => slideByKey(event, source, unit)}
      />
      <span className="slide-words" />
    </div>
  );
}
