/**
 * The map pad's moving part. The still map is drawn when the model, its map, the size, the theme or the unit changes;
 * a frame in which only the pose moved writes a few transforms and numbers, and nothing is rendered by React.
 */
import type { GapField } from '../../solver/clearance/gapField.ts';
import { rackRange } from '../../solver/model/defaults.ts';
import { withinStops } from '../../solver/worst.ts';
import { inputs, posed, view } from '../state/bench.ts';
import { chosenGap } from '../state/chosenGap.ts';
import { onFrame, requestFrame } from '../state/frame.ts';
import { type Cycle, travelRange } from '../state/inputs.ts';
import type { ShownMap } from '../state/map.ts';
import { lockMaps } from '../state/mapped.ts';
import { steerSense } from '../state/steerSense.ts';
import { stops } from '../state/stopped.ts';
import type { LengthUnit } from '../state/view.ts';
import { gapUnit, length, lengthNumber, signed } from '../words/format.ts';
import { pairWords } from '../words/parts.ts';
import { gapState } from './gapColours.ts';
import { createMapFrame, type MapFrame, rackAt, travelAt, xOfRack, yOfTravel } from './mapFrame.ts';
import { drawLegend } from './mapLegend.ts';
import { drawMap } from './mapPaint.ts';
import { readInks } from './paper.ts';

export interface MapPadElements {
  readonly card: HTMLElement;
  readonly pad: HTMLElement;
  readonly canvas: HTMLCanvasElement;
  readonly legend: HTMLCanvasElement;
  readonly dot: HTMLElement;
  readonly gapTag: HTMLElement;
  readonly levelLine: HTMLElement;
  readonly uprightLine: HTMLElement;
  readonly travelTag: HTMLElement;
  readonly rackTag: HTMLElement;
  readonly travelInput: HTMLInputElement;
  readonly rackInput: HTMLInputElement;
  readonly worst: HTMLElement;
  readonly summary: HTMLElement;
  readonly note: HTMLElement;
}

/** A length with a plus or minus, in the unit shown. */
function signedLength(mm: number, unit: LengthUnit, digits = 1): string {
  if (unit === 'mm') return signed(mm, digits);
  const text = lengthNumber(mm, unit, digits);
  return mm > 0 && text !== lengthNumber(0, unit, digits) ? `+${text}` : text;
}

/** "+80.0 mm, wheel up": for whoever hears the map. */
function travelWords(mm: number, unit: LengthUnit): string {
  const side = mm > 0 ? ', wheel up' : mm < 0 ? ', wheel down' : '';
  return `${length(Math.abs(mm), unit)}${side}`;
}

function rackWords(mm: number, unit: LengthUnit): string {
  const side = mm > 0 ? ' to the left' : mm < 0 ? ' to the right' : '';
  return `${length(Math.abs(mm), unit)}${side}`;
}

/** Whether part of the map lies past a stop, where the worst place is not looked for. */
function hasStops({ model, travel }: ShownMap): boolean {
  const [least, most] = withinStops(model, travel);
  return least > travel[0] || most < travel[1];
}

/** "40.4 mm"; of the worst of all with the pair it is of: "Tie rod to wheel 40.4 mm". */
function gapWords({ gap, pairs, which }: GapField, unit: LengthUnit): string {
  const words = length(gap, gapUnit(unit));
  return pairs.length === 1 ? words : `${pairWords(pairs[which]!)} ${words}`;
}

/** One verdict over the whole map, in words. */
function summaryOf(shown: ShownMap, unit: LengthUnit): string {
  const { map, pairs, wanted, worst } = shown;
  if (worst === null) return 'No pose of this corner can be reached.';
  const state = gapState(worst.value, wanted);
  const verdict = {
    touch: 'They touch in part of the range.',
    near: 'Part of the range is under the wanted gap.',
    clear: 'Clear in the whole range that was tried.',
  }[state];
  const out = map.reached.includes(0) ? ' Part of the range is out of reach.' : '';
  const where = hasStops(shown) ? ' within the stops' : '';
  return `Least gap, ${pairWords(pairs[worst.which]!)}${where}: ${length(worst.gap, gapUnit(unit))} at travel ${travelWords(worst.travel, unit)}, rack ${rackWords(worst.rack, unit)}. ${verdict}${out}`;
}

const NO_STEERING = 'No steering limit in this model: straight ahead only.';
const HATCHED = 'Hatched grey: out of reach.';
/** Half the width of a tag with the longest number, px. */
const TAG_HALF = 24;
const KEYS: ReadonlySet<string> = new Set([
  'ArrowUp',
  'ArrowDown',
  'ArrowLeft',
  'ArrowRight',
  'Home',
]);

export function createMapPad(elements: MapPadElements): () => void {
  const { card, pad, canvas, legend, dot, gapTag, travelInput, rackInput } = elements;
  let frame: MapFrame | null = null;
  let isStale = true;
  let shownVersion = -1;
  let shownUnit: LengthUnit | null = null;
  const shown = { travel: Number.NaN, rack: Number.NaN };

  function spoil(): void {
    isStale = true;
    requestFrame();
  }

  /** Draws the still map and the legend, and writes what they say. */
  function draw(): void {
    const { present, held } = lockMaps.getState();
    if (present === null) return;
    const { unit, theme } = view.getState();
    const { clientWidth, clientHeight } = pad;
    // Left lock stands on the left of the paper.
    const sense = steerSense() === 1 ? -1 : 1;
    frame = createMapFrame(clientWidth, clientHeight, present.travel, present.rack, sense);
    const inks = readInks(card);
    const { showsUsable, region } = stops.getState();
    const usable = showsUsable ? region : null;
    const drawing = { frame, present, held, usable, unit, theme, inks };
    const { scale, isReachNamed } = drawMap(canvas, drawing);
    drawLegend(legend, legend.clientWidth, legend.clientHeight, scale, theme, unit, inks);
    card.classList.toggle('map-is-line', frame.isLine);
    const notes = [frame.isLine && NO_STEERING, !isReachNamed && HATCHED].filter(Boolean);
    elements.note.textContent = notes.join(' ');
    writeWorst(present, unit);
    const { model } = posed.current().corner;
    writeRange(travelInput, travelRange(model));
    writeRange(rackInput, rackRange(model.steering));
    shownVersion = -1;
  }

  function writeWorst(present: ShownMap, unit: LengthUnit): void {
    const { worst, isFull } = present;
    elements.worst.toggleAttribute('disabled', worst === null);
    card.dataset['state'] = worst === null ? 'none' : gapState(worst.value, present.wanted);
    const figure = elements.worst.querySelector('[data-worst-gap]')!;
    const place = elements.worst.querySelector('[data-worst-place]')!;
    figure.textContent =
      worst === null ? 'nothing in reach' : `least ${length(worst.gap, gapUnit(unit))}`;
    place.textContent =
      worst === null
        ? ''
        : `travel ${signedLength(worst.travel, unit, 0)}, rack ${signedLength(worst.rack, unit, 0)}${hasStops(present) ? '\nwithin the stops' : ''}`;
    elements.summary.textContent = summaryOf(present, unit);
    card.dataset['full'] = isFull ? '1' : '0';
  }

  function writeRange(input: HTMLInputElement, [least, most]: readonly [number, number]): void {
    input.min = String(least);
    input.max = String(most);
    input.disabled = least === most;
  }

  /** Moves the dot, its lines and its tags to the present pose. */
  function follow(): void {
    if (frame === null) return;
    const { unit } = view.getState();
    const version = posed.version();
    if (version === shownVersion && unit === shownUnit) return;
    shownVersion = version;
    shownUnit = unit;
    const { travel, rack } = inputs.getState();
    const x = xOfRack(frame, rack);
    const y = yOfTravel(frame, travel);
    dot.style.transform = `translate(${x}px, ${y}px)`;
    elements.levelLine.style.transform = `translate(${frame.left}px, ${y}px)`;
    elements.levelLine.style.width = `${frame.plotWidth}px`;
    elements.uprightLine.style.transform = `translate(${x}px, ${frame.top}px)`;
    elements.uprightLine.style.height = `${frame.plotHeight}px`;
    writeGap(x, y, unit);
    if (shown.travel !== travel) travelInput.value = String(travel);
    if (shown.rack !== rack) rackInput.value = String(rack);
    shown.travel = travel;
    shown.rack = rack;
    elements.travelTag.style.transform = `translate(${frame.left - 2}px, ${y}px) translate(-100%, -50%)`;
    const tagX = Math.min(frame.width - TAG_HALF, Math.max(TAG_HALF, x));
    elements.rackTag.style.transform = `translate(${tagX}px, ${frame.top + frame.plotHeight}px) translateX(-50%)`;
    elements.travelTag.textContent = signedLength(travel, unit);
    elements.rackTag.textContent = signedLength(rack, unit);
    travelInput.setAttribute('aria-valuetext', travelWords(travel, unit));
    rackInput.setAttribute('aria-valuetext', rackWords(rack, unit));
  }

  function writeGap(x: number, y: number, unit: LengthUnit): void {
    if (frame === null) return;
    const field = posed.current().pose.outcome === 'reached' ? chosenGap() : null;
    const state = field === null ? 'out' : gapState(field.value, field.wanted);
    if (dot.dataset['state'] !== state) dot.dataset['state'] = state;
    gapTag.textContent = field === null ? 'out of reach' : gapWords(field, unit);
    const isNamed = field !== null && field.pairs.length > 1;
    gapTag.classList.toggle('map-is-named', isNamed);
    const isLeft = !frame.isLine && x > frame.left + frame.plotWidth - (isNamed ? 142 : 84);
    const isLow = y < frame.top + (isNamed ? 64 : 34);
    const dx = isLeft ? 'calc(-100% - 12px)' : '12px';
    const dy = isLow ? '10px' : 'calc(-100% - 8px)';
    gapTag.style.transform = `translate(${x}px, ${y}px) translate(${dx}, ${dy})`;
  }

  /** A click may come after the pad took a new size and before the page's next picture, which would have told of it. */
  function fitPaper(): void {
    if (frame?.width === pad.clientWidth && frame.height === pad.clientHeight) return;
    draw();
    follow();
  }

  function onEveryFrame(): void {
    if (isStale) {
      isStale = false;
      draw();
    }
    follow();
  }

  let bounds: DOMRect | null = null;
  const start = { travel: 0, rack: 0, playing: null as Cycle | null, pointer: -1 };

  function moveTo(event: PointerEvent): void {
    if (bounds === null || frame === null) return;
    // In a large window the page is drawn larger: back to the pad's own pixels.
    const x = ((event.clientX - bounds.left) * frame.width) / bounds.width;
    const y = ((event.clientY - bounds.top) * frame.height) / bounds.height;
    inputs.move(travelAt(frame, y), rackAt(frame, x));
  }

  function onDown(event: PointerEvent): void {
    if (event.button !== 0 || frame === null) return;
    event.preventDefault();
    fitPaper();
    bounds = pad.getBoundingClientRect();
    pad.setPointerCapture(event.pointerId);
    pad.classList.add('map-is-dragged');
    travelInput.focus({ preventScroll: true });
    ({ travel: start.travel, rack: start.rack, playing: start.playing } = inputs.getState());
    start.pointer = event.pointerId;
    inputs.play(null);
    moveTo(event);
  }

  function onMove(event: PointerEvent): void {
    if (pad.hasPointerCapture(event.pointerId)) moveTo(event);
  }

  function onUp(): void {
    bounds = null;
    pad.classList.remove('map-is-dragged');
  }

  /** Gives the drag up, before anything else hears of the key: an enlarged map stays as it is. */
  function onEscape(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || bounds === null) return;
    event.preventDefault();
    event.stopPropagation();
    putBack();
  }

  function putBack(): void {
    if (bounds === null) return;
    if (pad.hasPointerCapture(start.pointer)) pad.releasePointerCapture(start.pointer);
    onUp();
    inputs.move(start.travel, start.rack);
    inputs.play(start.playing);
  }

  /** The sliders have no arrows of their own: the bench's keys move both ways, by the bench's steps. */
  function onKey(event: KeyboardEvent): void {
    const { key, shiftKey, altKey } = event;
    if (event.ctrlKey || event.metaKey || !KEYS.has(key)) return;
    event.preventDefault();
    event.stopPropagation();
    inputs.play(null);
    const passedOn = { key, shiftKey, altKey, bubbles: true, cancelable: true };
    document.body.dispatchEvent(new KeyboardEvent('keydown', passedOn));
  }

  function onInput(): void {
    inputs.play(null);
    inputs.move(Number(travelInput.value), Number(rackInput.value));
  }

  const leaving = new AbortController();
  const { signal } = leaving;
  pad.addEventListener('pointerdown', onDown, { signal });
  pad.addEventListener('pointermove', onMove, { signal });
  pad.addEventListener('pointerup', onUp, { signal });
  pad.addEventListener('pointercancel', putBack, { signal });
  window.addEventListener('keydown', onEscape, { signal, capture: true });
  pad.addEventListener('keydown', onKey, { signal });
  travelInput.addEventListener('input', onInput, { signal });
  rackInput.addEventListener('input', onInput, { signal });
  // Drawn before the new size is painted, or the old picture would be seen stretched.
  const size = new ResizeObserver(() => {
    isStale = true;
    onEveryFrame();
    if (bounds !== null) bounds = pad.getBoundingClientRect();
  });
  size.observe(pad);
  const exits = [
    lockMaps.subscribe(spoil),
    stops.subscribe((now, before) => {
      if (now.showsUsable !== before.showsUsable || now.region !== before.region) spoil();
    }),
    view.subscribe((now, before) => {
      if (now.theme !== before.theme || now.unit !== before.unit) spoil();
    }),
    lockMaps.watch(),
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

/** Moves the bench to the least gap that the map knows. */
export function goToWorst(): void {
  const worst = lockMaps.getState().present?.worst;
  if (worst == null) return;
  inputs.play(null);
  inputs.move(worst.travel, worst.rack);
}
