/** The explanation of one measure, beside its panel and never over its figure. */
import './explanation.css';
import { useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { explained, stopExplaining } from './explain.ts';

const MARGIN = 10;

/** Puts the box left of the panel where there is room, else above the panel. */
function place(box: HTMLElement, anchor: HTMLElement): void {
  const panel = (anchor.closest('[data-panel]') ?? anchor).getBoundingClientRect();
  const name = anchor.getBoundingClientRect();
  const { width, height } = box.getBoundingClientRect();
  const isBeside = panel.left - width > 2 * MARGIN;
  const left = isBeside ? panel.left - width - MARGIN : Math.max(MARGIN, panel.left);
  const top = isBeside
    ? Math.min(name.top - 6, innerHeight - height - MARGIN)
    : panel.top - height - MARGIN;
  box.style.left = `${Math.round(left)}px`;
  box.style.top = `${Math.round(Math.max(MARGIN, top))}px`;
}

export function Explanation() {
  const now = useStore(explained, (state) => state.now);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (now === null || box.current === null) return;
    place(box.current, now.anchor);
    const away = (event: PointerEvent) => {
      if (!now.anchor.contains(event.target as Node)) stopExplaining();
    };
    addEventListener('pointerdown', away);
    return () => removeEventListener('pointerdown', away);
  }, [now]);
  if (now === null) return null;
  return (
    <div ref={box} id="explanation" role="tooltip" className="explanation">
      <strong className="explanation-title">{now.title}</strong>
      <span>{now.text}</span>
    </div>
  );
}
