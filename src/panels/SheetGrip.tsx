/** The grip of the phone's sheet: dragged, tapped or by keys it sets one of three heights. */
import { type KeyboardEvent, type PointerEvent, type RefObject, useRef } from 'react';

const STEPS = ['low', 'half', 'tall'] as const;

export type SheetStep = (typeof STEPS)[number];

/** A pointer that has moved less than this, px, has tapped. */
const TAP = 5;

interface Props {
  readonly place: RefObject<HTMLElement | null>;
  readonly step: SheetStep;
  readonly onStep: (step: SheetStep) => void;
}

/** Heights of the steps in this window, px; `low` is what stands above the sheet's body. */
function heights(place: HTMLElement): readonly number[] {
  const head = place.querySelector('.phone-tabs')?.getBoundingClientRect().bottom ?? 0;
  const low = head - place.getBoundingClientRect().top;
  return [low, 0.58 * innerHeight, innerHeight - 196];
}

function nearest(all: readonly number[], height: number): SheetStep {
  let best = 0;
  all.forEach((each, i) => {
    if (Math.abs(each - height) < Math.abs(all[best]! - height)) best = i;
  });
  return STEPS[best]!;
}

export function SheetGrip({ place, step, onStep }: Props) {
  const drag = useRef<{ y: number; height: number; isMoved: boolean } | null>(null);

  function down(event: PointerEvent): void {
    const { current: sheet } = place;
    if (sheet === null || event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { y: event.clientY, height: sheet.offsetHeight, isMoved: false };
  }

  function move(event: PointerEvent): void {
    const { current: held } = drag;
    if (held === null || place.current === null) return;
    const up = held.y - event.clientY;
    if (Math.abs(up) > TAP) held.isMoved = true;
    if (!held.isMoved) return;
    place.current.dataset['dragged'] = '';
    const [low = 0, , tall = 0] = heights(place.current);
    const height = Math.min(tall, Math.max(low, held.height + up));
    place.current.style.height = `${height}px`;
  }

  function end(isTaken: boolean): void {
    const { current: held } = drag;
    const { current: sheet } = place;
    drag.current = null;
    if (held === null || sheet === null) return;
    const height = sheet.offsetHeight;
    sheet.style.height = '';
    delete sheet.dataset['dragged'];
    if (!isTaken) return;
    if (held.isMoved) onStep(nearest(heights(sheet), height));
    else onStep(step === 'half' ? 'tall' : 'half');
  }

  function key(event: KeyboardEvent): void {
    const at = STEPS.indexOf(step);
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (way !== undefined) onStep(STEPS[Math.min(2, Math.max(0, at + way))]!);
    else if (event.key === 'Enter' || event.key === ' ') onStep(STEPS[(at + 1) % 3]!);
    else return;
    event.preventDefault();
  }

  return (
    <div
      role="slider"
      tabIndex={0}
      className="sheet-grip"
      aria-label="Height of the sheet"
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={2}
      aria-valuenow={STEPS.indexOf(step)}
      aria-valuetext={step}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={() => end(true)}
      onPointerCancel={() => end(false)}
      onKeyDown={key}
    />
  );
}
