/** The explanation of one measure, beside its panel, never over its figure, and off the drawing it lights. */
import './explanation.css';
import { useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { EXPLANATIONS } from '../../solver/index.ts';
import { type Box, litBox } from '../state/litBox.ts';
import { explained, stopExplaining } from './explain.ts';
import { explanationPlace } from './explanationPlace.ts';

/** What the words must not cover, the dearest first: figures of the readings, the gap, the lit drawing, any panel. */
const DEAR: readonly (readonly [selector: string, worth: number])[] = [
  ['[data-part="figure"]', 20],
  ['[data-panel="gap"]', 8],
  ['[data-panel], .map-card', 1],
];
const DRAWING_WORTH = 4;

/** Puts the words where they cover least. */
function place(words: HTMLElement, anchor: HTMLElement, drawing: Box | null): void {
  const kept = DEAR.flatMap(([selector, worth]) =>
    [...document.querySelectorAll(selector)].map((element) => ({
      box: element.getBoundingClientRect() as Box,
      worth,
    })),
  );
  if (drawing !== null) kept.push({ box: drawing, worth: DRAWING_WORTH });
  const { width, height } = words.getBoundingClientRect();
  const { left, top } = explanationPlace(width, height, {
    width: innerWidth,
    height: innerHeight,
    panel: (anchor.closest('[data-panel]') ?? anchor).getBoundingClientRect(),
    name: anchor.getBoundingClientRect(),
    kept,
  });
  words.style.left = `${Math.round(left)}px`;
  words.style.top = `${Math.round(top)}px`;
}

export function Explanation() {
  const now = useStore(explained, (state) => state.now);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (now === null || box.current === null) return;
    const words = box.current;
    // The picture says where the drawing is once it has drawn it: a frame later.
    const settle = (): void => {
      const lit = litBox.getState();
      place(words, now.anchor, lit.key === now.key ? lit.box : null);
    };
    settle();
    const leave = litBox.subscribe(settle);
    const away = (event: PointerEvent) => {
      if (!now.anchor.contains(event.target as Node)) stopExplaining();
    };
    addEventListener('pointerdown', away);
    return () => {
      leave();
      removeEventListener('pointerdown', away);
    };
  }, [now]);
  if (now === null) return null;
  return (
    <div ref={box} id="explanation" role="tooltip" className="explanation">
      <strong className="explanation-title">{now.title}</strong>
      <span>{EXPLANATIONS[now.key]}</span>
    </div>
  );
}
