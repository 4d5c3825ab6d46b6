/** A dial that is turned by hand, by key, by the mouse's wheel or by typing; React draws it once, frames turn it. */
import './dial.css';
import { useEffect, useId, useRef } from 'react';
import { onFrame } from '../../state/frame.ts';
import { DialFace } from './DialFace.tsx';
import { clamped, type DialSource } from './dial.ts';
import { listenToDial } from './dialHand.ts';

interface Parts {
  readonly dial: HTMLElement;
  readonly hand: Element;
  readonly bolt: Element | null;
  readonly field: HTMLInputElement;
  readonly words: HTMLElement;
  readonly effect: HTMLElement;
}

function partsOf(root: HTMLElement): Parts | null {
  const dial = root.querySelector<HTMLElement>('[role="slider"]');
  const hand = root.querySelector('[data-part="hand"]');
  const field = root.querySelector('input');
  const words = root.querySelector<HTMLElement>('[data-part="words"]');
  const effect = root.querySelector<HTMLElement>('[data-part="effect"]');
  if (!dial || !hand || !field || !words || !effect) return null;
  return { dial, hand, field, words, effect, bolt: root.querySelector('[data-part="bolt"]') };
}

/** Half the way of the bolt's dot along the slot, in units of the face. */
const BOLT_WAY = 26;

/** Makes the frame callback that turns the dial. */
function createDial(parts: Parts, source: DialSource): () => void {
  const { dial, hand, bolt, field, words, effect } = parts;
  let shown = Number.NaN;
  return () => {
    const value = source.read();
    if (value === shown) return;
    shown = value;
    const degrees = (360 * value) / source.perTurn;
    hand.setAttribute('transform', `rotate(${degrees})`);
    const along = BOLT_WAY * Math.sin((degrees * Math.PI) / 180);
    bolt?.setAttribute('cx', along.toFixed(2));
    const text = source.figure(value);
    if (field.dataset['typing'] === undefined) field.value = text;
    const said = source.words(value);
    words.textContent = said;
    effect.textContent = source.effect(value);
    dial.ariaValueNow = String(value);
    dial.ariaValueText = said;
  };
}

/** Takes what was typed as far as it goes; answers what is to be said of it. */
function takeTyped(text: string, source: DialSource): { said: string; isTaken: boolean } {
  const entered = source.enter(text);
  if (!entered.ok) return { said: entered.why, isTaken: false };
  const taken = clamped(entered.value, source);
  source.write(taken);
  const isCut = Math.abs(taken - entered.value) > 1e-9;
  return { said: isCut ? source.stops : '', isTaken: true };
}

function leaveField(field: HTMLInputElement, refusal: HTMLElement | null, source: DialSource) {
  if (field.dataset['typing'] === undefined) return;
  const { said, isTaken } = takeTyped(field.value, source);
  if (refusal !== null) refusal.textContent = said;
  field.ariaInvalid = isTaken ? null : 'true';
  // What is not understood stays to be mended.
  if (!isTaken) return;
  delete field.dataset['typing'];
  field.value = source.figure(source.read());
}

function giveUp(field: HTMLInputElement, refusal: HTMLElement | null, source: DialSource): void {
  delete field.dataset['typing'];
  field.ariaInvalid = null;
  if (refusal !== null) refusal.textContent = '';
  field.value = source.figure(source.read());
}

function DialField({ source }: { readonly source: DialSource }) {
  const refusal = useRef<HTMLSpanElement>(null);
  const id = useId();
  return (
    <>
      <span className="align-entry-box">
        <input
          className="slide-figure"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          aria-label={`${source.label}, ${source.unit === '°' ? 'degrees' : source.unit}`}
          aria-describedby={id}
          onInput={(event) => {
            event.currentTarget.dataset['typing'] = '';
          }}
          onFocus={(event) => event.currentTarget.select()}
          onBlur={(event) => leaveField(event.currentTarget, refusal.current, source)}
          onKeyDown={(event) => {
            if (event.key === 'Escape') giveUp(event.currentTarget, refusal.current, source);
            if (event.key === 'Enter' || event.key === 'Escape') event.currentTarget.blur();
          }}
        />
        <span aria-hidden="true">{source.unit}</span>
      </span>
      <span ref={refusal} id={id} className="align-refusal" role="alert" />
    </>
  );
}

/** `source` must stay the same object while nothing but its value changes. */
export function Dial({
  source,
  isCam,
  onHand,
}: {
  readonly source: DialSource;
  readonly isCam: boolean;
  /** It was taken in hand. */
  readonly onHand?: () => void;
}) {
  const root = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const parts = root.current === null ? null : partsOf(root.current);
    if (parts === null) return undefined;
    const leaveFrames = onFrame(createDial(parts, source));
    const leaveHand = listenToDial(parts.dial, source);
    return () => {
      leaveFrames();
      leaveHand();
    };
  }, [source]);
  const isEndless = source.most === Number.POSITIVE_INFINITY;
  return (
    <div ref={root} className="dial">
      <div
        className="dial-turn"
        role="slider"
        tabIndex={0}
        onFocus={onHand}
        aria-label={source.label}
        aria-valuemin={isEndless ? undefined : source.least}
        aria-valuemax={isEndless ? undefined : source.most}
        aria-valuenow={source.read()}
      >
        <DialFace divisions={source.divisions} isCam={isCam} />
      </div>
      <div className="dial-side">
        <DialField source={source} />
      </div>
      <div className="dial-says">
        <span className="dial-words" data-part="words" />
        <span className="dial-effect" data-part="effect" />
      </div>
    </div>
  );
}
