/** A hand or a key on the chart asks for a pair of camber and caster: the targets of the model. */
import { type KeyboardEvent, type MouseEvent, type PointerEvent, useRef } from 'react';
import type { AnglePoint, Model } from '../../../solver/index.ts';
import { alignment } from '../../state/aligned.ts';
import { documentStore } from '../../state/bench.ts';
import { editModel } from '../points/edit.ts';
import { CHART_WIDTH, pointAt, type RegionFrame } from './regionFrame.ts';
import { setAngle } from './setPose.ts';
import { withTarget } from './targets.ts';

/** What a hand asks for is round: hundredths of a degree. */
const ROUND = 100;
const KEY_STEP = 0.05;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowDown: [0, -1],
  ArrowUp: [0, 1],
};

/** What is wanted, where it is stated; else what is set now. */
export function wantedPoint({ targets }: Model): AnglePoint {
  return {
    camber: targets?.camber?.value ?? setAngle('camber'),
    caster: targets?.caster?.value ?? setAngle('caster'),
  };
}

function askFor({ camber, caster }: AnglePoint): void {
  const round = (value: number) => Math.round(value * ROUND) / ROUND + 0;
  editModel((model) =>
    withTarget(withTarget(model, 'camber', round(camber)), 'caster', round(caster)),
  );
}

/** A drag is one gesture of the history; the settings follow while it goes on. */
export function useAsking(frame: RegionFrame) {
  const isHeld = useRef(false);
  const isTouched = useRef(false);
  const ask = (event: MouseEvent<HTMLElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const scale = CHART_WIDTH / box.width;
    askFor(pointAt(frame, (event.clientX - box.left) * scale, (event.clientY - box.top) * scale));
  };
  const end = (isKept: boolean): void => {
    if (!isHeld.current) return;
    isHeld.current = false;
    if (isKept) documentStore.endGesture();
    else documentStore.cancelGesture();
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      // A finger drags the page but by the wanted point itself; its tap asks, below.
      const isOnPoint = (event.target as Element).closest('.region-hold') !== null;
      isTouched.current = event.pointerType === 'touch' && !isOnPoint;
      if (event.button !== 0 || isTouched.current) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      isHeld.current = true;
      documentStore.beginGesture();
      if (!alignment.getState().isAsked) alignment.find();
      ask(event);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      if (isHeld.current) ask(event);
    },
    onClick: (event: MouseEvent<HTMLElement>) => {
      if (!isTouched.current) return;
      if (!alignment.getState().isAsked) alignment.find();
      ask(event);
    },
    onPointerUp: () => end(true),
    onPointerCancel: () => end(false),
    onKeyDown: (event: KeyboardEvent<HTMLElement>) => {
      if (event.key === 'Escape' && isHeld.current) {
        event.preventDefault();
        end(false);
      }
      const way = ARROWS[event.key];
      if (way === undefined || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      const { camber, caster } = wantedPoint(documentStore.getState().model);
      const step = KEY_STEP * (event.shiftKey ? 5 : event.altKey ? 0.2 : 1);
      if (!alignment.getState().isAsked) alignment.find();
      askFor({ camber: camber + way[0] * step, caster: caster + way[1] * step });
    },
  };
}
