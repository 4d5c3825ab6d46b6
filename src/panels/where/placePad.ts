/** The moving part of the picture: draws it when something changed, and has the probe follow pointer and keys. */

import { PLANE_AXES, placeOf, type Question } from '../../../solver/index.ts';
import { readInks } from '../../charts/paper.ts';
import { documentStore, view } from '../../state/bench.ts';
import { onFrame, requestFrame } from '../../state/frame.ts';
import { limitOf } from '../../state/where.ts';
import { where } from '../../state/whereabouts.ts';
import { gapUnit, length } from '../../words/format.ts';
import type { WhereStart } from '../../worker/whereJob.ts';
import { valueAt } from './between.ts';
import { drawPlaces } from './paintPlace.ts';
import { type PaperFrame, paperFrame, placeAt, xOf, yOf } from './paperFrame.ts';
import type { Spot } from './placeDrawing.ts';
import { keyed, SNAP, snapped } from './probeKeys.ts';
import { aimText, standsAlike, waysOf } from './words.ts';

export interface PlacePadElements {
  readonly pad: HTMLElement;
  readonly canvas: HTMLCanvasElement;
  readonly cross: HTMLElement;
  readonly tag: HTMLElement;
  readonly acrossInput: HTMLInputElement;
  readonly upInput: HTMLInputElement;
}

/** What the still picture is drawn from. */
const STILL = ['picture', 'question', 'start', 'bests', 'limits'] as const;

/** The present coordinates along the plane's two axes, mm. */
function homeOf({ plane }: Question, { present }: WhereStart): Spot {
  const [i, j] = PLANE_AXES[plane];
  return [present.place[i]!, present.place[j]!];
}

export function createPlacePad(elements: PlacePadElements): () => void {
  const { pad, canvas, cross, tag, acrossInput, upInput } = elements;
  let frame: PaperFrame | null = null;
  let isStale = true;

  function spoil(): void {
    isStale = true;
    requestFrame();
  }

  function draw(): void {
    const state = where.getState();
    const { picture, question, start, bests } = state;
    pad.dataset['nodes'] = picture === null ? '0' : String(picture.xs.length);
    if (picture === null || question === null || start === null) {
      frame = null;
      canvas.getContext('2d')?.clearRect(0, 0, canvas.width, canvas.height);
      return;
    }
    const { unit, theme } = view.getState();
    const { xs, ys } = picture;
    const half = (xs.at(-1)! - xs[0]!) / 2;
    const middle = [xs[0]! + half, ys[0]! + half] as const;
    frame = paperFrame(pad.clientWidth, question.plane, middle, half);
    pad.style.height = `${frame.height}px`;
    const { held, model } = documentStore.getState();
    const isElsewhere = held !== null && !standsAlike(held, model, question.subject);
    drawPlaces(canvas, {
      frame,
      picture,
      aim: question.aim,
      limit: limitOf(state),
      ideal: start.ideal,
      known: start.known,
      present: start.present.place,
      held: isElsewhere ? placeOf(held, question.subject) : null,
      reach: question.reach,
      bests: bests ?? [],
      unit,
      theme,
      inks: readInks(pad),
    });
    follow();
  }

  /** Puts the cross where the probe is, and tells the inputs of it. */
  function follow(): void {
    const { probeAt, start, question } = where.getState();
    cross.hidden = frame === null || probeAt === null;
    if (frame === null || start === null || question === null) return;
    const home = homeOf(question, start);
    const at = probeAt ?? home;
    cross.style.transform = `translate(${xOf(frame, at[0])}px, ${yOf(frame, at[1])}px)`;
    const span = frame.size / frame.scale;
    const ways = waysOf(question.plane);
    [acrossInput, upInput].forEach((input, n) => {
      input.min = String(frame!.least[n]);
      input.max = String(frame!.least[n]! + span);
      input.value = String(at[n]);
      const way = at[n]! - home[n]!;
      const side = ways[n]![way > 0 ? 1 : 0];
      const size = length(Math.abs(way), gapUnit(view.getState().unit));
      input.ariaLabel = `Probe, ${ways[n]![0]} or ${ways[n]![1]}`;
      input.ariaValueText = Math.abs(way) < SNAP / 2 ? 'where the point is now' : `${size} ${side}`;
    });
  }

  function onEveryFrame(): void {
    if (!isStale) return;
    isStale = false;
    draw();
  }

  function go(at: readonly [number, number]): void {
    if (frame === null) return;
    const span = frame.size / frame.scale;
    const inside = at.map((value, n) => {
      const low = frame!.least[n]!;
      return Math.min(low + span, Math.max(low, snapped(value)));
    });
    where.moveProbe([inside[0]!, inside[1]!]);
    follow();
  }

  function placeUnder(event: PointerEvent): readonly [number, number] | null {
    if (frame === null) return null;
    const bounds = pad.getBoundingClientRect();
    // In a large window the page is drawn larger: back to the pad's own pixels.
    const zoom = frame.width / bounds.width;
    return placeAt(
      frame,
      (event.clientX - bounds.left) * zoom,
      (event.clientY - bounds.top) * zoom,
    );
  }

  function onDown(event: PointerEvent): void {
    const at = placeUnder(event);
    if (event.button !== 0 || at === null) return;
    event.preventDefault();
    pad.setPointerCapture(event.pointerId);
    acrossInput.focus({ preventScroll: true });
    go(at);
  }

  function onMove(event: PointerEvent): void {
    const at = placeUnder(event);
    const { picture, question } = where.getState();
    if (at === null || frame === null || picture === null || question === null) return;
    if (pad.hasPointerCapture(event.pointerId)) go(at);
    // As the probe would have it there.
    const value = valueAt(picture, [snapped(at[0]), snapped(at[1])]);
    tag.hidden = event.pointerType !== 'mouse';
    tag.textContent = Number.isNaN(value)
      ? 'cannot follow the travel'
      : aimText(value, question.aim, view.getState().unit);
    const [x, y] = [xOf(frame, at[0]), yOf(frame, at[1])];
    const isRight = x > frame.left + frame.size - 110;
    tag.style.transform = `translate(${x}px, ${y}px) translate(${isRight ? 'calc(-100% - 12px)' : '12px'}, ${y < 40 ? '12px' : 'calc(-100% - 10px)'})`;
  }

  function onLeave(): void {
    tag.hidden = true;
  }

  function onKey(event: KeyboardEvent): void {
    const { probeAt, start, question } = where.getState();
    if (event.ctrlKey || event.metaKey || start === null || question === null) return;
    const home = homeOf(question, start);
    const next = keyed(event, probeAt ?? home, home, question.half, frame?.sense ?? 1);
    if (next === null) return;
    event.preventDefault();
    event.stopPropagation();
    go(next);
  }

  function onInput(): void {
    go([Number(acrossInput.value), Number(upInput.value)]);
  }

  const leaving = new AbortController();
  const { signal } = leaving;
  pad.addEventListener('pointerdown', onDown, { signal });
  pad.addEventListener('pointermove', onMove, { signal });
  pad.addEventListener('pointerleave', onLeave, { signal });
  pad.addEventListener('keydown', onKey, { signal });
  acrossInput.addEventListener('input', onInput, { signal });
  upInput.addEventListener('input', onInput, { signal });
  let width = 0;
  const size = new ResizeObserver(() => {
    if (pad.clientWidth === width) return;
    width = pad.clientWidth;
    draw();
  });
  size.observe(pad);
  const exits = [
    where.subscribe((now, before) => {
      if (now.probeAt !== before.probeAt) follow();
      if (STILL.some((key) => now[key] !== before[key])) spoil();
    }),
    view.subscribe((now, before) => {
      if (now.theme !== before.theme || now.unit !== before.unit) spoil();
    }),
    documentStore.subscribe((now, before) => {
      if (now.held !== before.held) spoil();
    }),
    onFrame(onEveryFrame),
    () => size.disconnect(),
    () => leaving.abort(),
  ];
  // The numbers are set in the page's own type: drawn again once it is there.
  void document.fonts?.ready.then(() => {
    if (!signal.aborted) spoil();
  });
  return () => {
    for (const exit of exits) exit();
  };
}
