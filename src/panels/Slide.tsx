/** A length that can be typed and slid: a figure, a thin slider, and words that say what the value means. */
import { type KeyboardEvent, useId, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import type { LengthUnit } from '../state/view.ts';
import { enteredLength } from '../words/entry.ts';
import { length, lengthNumber, lengthUnitName } from '../words/format.ts';
import { keyStep } from './steps.ts';

export interface SlideSource {
  readonly label: string;
  /** Present value, mm. */
  readonly read: () => number;
  readonly write: (mm: number) => void;
  /** [least, greatest], mm. */
  readonly range: () => readonly [number, number];
  readonly words: (mm: number) => string;
  /** What the slider's left and right end mean, in place of the words. */
  readonly ends?: readonly [string, string];
  /** What stops a typed value at either end, in words. */
  readonly stops: readonly [string, string];
  /** True while the greatest value stands at the slider's left. */
  readonly isReversed?: () => boolean;
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
  readonly refusal: HTMLElement;
}

/** The side of its middle that a value stands on. */
function sideOf(value: number): string {
  if (Math.abs(value) < 0.05) return 'middle';
  return value < 0 ? 'left' : 'right';
}

/** Makes the frame callback that follows the source, and leaves a field alone while it is typed in. */
function createSlide(parts: Parts, source: SlideSource, unit: LengthUnit): () => void {
  const { field, slider, words, refusal } = parts;
  let shown = Number.NaN;
  let least = Number.NaN;
  let most = Number.NaN;
  let isReversed: boolean | null = null;

  /** Fits the slider to its range and sense; what is shown is then written anew. */
  function follow(): void {
    const range = source.range();
    const reversed = source.isReversed?.() ?? false;
    if (range[0] === least && range[1] === most && reversed === isReversed) return;
    [least, most] = range;
    isReversed = reversed;
    slider.min = String(least);
    slider.max = String(most);
    slider.disabled = least === most;
    slider.dir = reversed ? 'rtl' : 'ltr';
    shown = Number.NaN;
  }

  function write(value: number): void {
    slider.value = String(value);
    words.dataset['side'] = sideOf(isReversed === true ? -value : value);
    // What was said of a typed value holds until the next one.
    if (refusal.dataset['at'] !== String(value)) refusal.textContent = '';
    const text = lengthNumber(value, unit);
    if (field.dataset['typing'] === undefined && field.value !== text) field.value = text;
    const said = source.words(value);
    if (words.textContent === said && slider.ariaValueText !== null) return;
    words.textContent = said;
    slider.ariaValueText = `${length(value, unit)}, ${said}`;
  }

  return () => {
    follow();
    const value = source.read();
    if (value === shown) return;
    shown = value;
    write(value);
  };
}

/** +1 for a key that goes up or to the right. */
function direction(key: string): number {
  if (key === 'ArrowUp' || key === 'ArrowRight') return 1;
  return key === 'ArrowDown' || key === 'ArrowLeft' ? -1 : 0;
}

/** Keys of the slider: the bench's own steps. Home is the bench's own too. */
function slideByKey(event: KeyboardEvent<HTMLElement>, source: SlideSource, unit: LengthUnit) {
  if (event.key === 'Escape') {
    source.cancel?.();
    return;
  }
  const [least, most] = source.range();
  const way = (source.isReversed?.() ? -1 : 1) * direction(event.key);
  if (way === 0) return;
  const wanted = source.read() + way * keyStep(event, unit);
  event.preventDefault();
  source.begin?.();
  source.write(Math.min(most, Math.max(least, wanted)));
  source.end?.();
}

/** What is wrong with a typed value, in words: what stops it, or why it is none. Null when it is taken as it is. */
function takeTyped(text: string, source: SlideSource, unit: LengthUnit): string | null {
  const entered = enteredLength(text, unit);
  if (!entered.ok) return entered.why;
  const [least, most] = source.range();
  const taken = Math.min(most, Math.max(least, entered.value));
  source.write(taken);
  if (Math.abs(taken - entered.value) < 1e-6) return null;
  const isLow = entered.value < least;
  return `${isLow ? 'Least' : 'Most'} is ${length(taken, unit)}: ${source.stops[isLow ? 0 : 1]}.`;
}

/** Leaves the field: what was typed is taken as far as it goes, the rest is said under it. */
function leaveField(field: HTMLInputElement, source: SlideSource, unit: LengthUnit): void {
  const isTyped = field.dataset['typing'] !== undefined;
  delete field.dataset['typing'];
  if (isTyped) {
    const said = takeTyped(field.value, source, unit);
    const refusal = field.closest('.slide')?.querySelector<HTMLElement>('.slide-refusal');
    if (refusal) {
      refusal.dataset['at'] = String(source.read());
      refusal.textContent = said ?? '';
    }
  }
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
        onBlur={(event) => leaveField(event.currentTarget, source, unit)}
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
  useLayoutEffect(() => {
    const [field, slider] = root.current?.querySelectorAll('input') ?? [];
    const said = [...(root.current?.querySelectorAll<HTMLElement>('[data-part]') ?? [])];
    const [refusal, words] = said;
    if (!field || !slider || !refusal || !words) return undefined;
    return onFrame(createSlide({ field, slider, words, refusal }, source, unit));
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
      <span className="slide-refusal" role="alert" data-part="refusal" />
      <span className={source.ends ? 'slide-words hidden-text' : 'slide-words'} data-part="words" />
      {source.ends && (
        <span className="slide-ends" aria-hidden="true">
          <span>{source.ends[0]}</span>
          <span>{source.ends[1]}</span>
        </span>
      )}
    </div>
  );
}
