/**
 * Labels of the picture: one layer of DOM text over the canvas, placed by hand in each frame. A fixed number of spans is
 * made once; a label's text is only written anew when its number or the unit has changed.
 */
import { type Camera, Vector2, Vector3 } from 'three';
import type { LengthUnit } from '../../state/view.ts';
import { toThree } from '../axes.ts';
import type { Tone } from '../palette.ts';
import { createBoxes } from './boxes.ts';

/** Text of a label from its number (mm, degrees, …) and the unit of lengths shown. */
export type Words = (value: number, unit: LengthUnit) => string;

const MOST = 48;
const HEIGHT = 20;
/** Width of a character of the bench's type at 14 px, and of both paddings: an estimate that asks no layout. */
const PER_CHARACTER = 6.9;
const PADDING = 14;

interface Slot {
  readonly span: HTMLSpanElement;
  words: Words | null;
  value: number;
  unit: LengthUnit;
  tone: Tone | null;
  width: number;
  isShown: boolean;
  x: number;
  y: number;
}

export interface Labels {
  /** Starts a frame: what is free of panels lies between (left, top) and (right, bottom), px. */
  begin(camera: Camera, width: number, height: number, unit: LengthUnit): void;
  keepInside(left: number, top: number, right: number, bottom: number): void;
  /** A label at a point of the vehicle, mm. Earlier ones keep their place; later ones give way. */
  put(x: number, y: number, z: number, tone: Tone, words: Words, value: number): void;
  /** True where a point is shown inside the edges of `keepInside`. */
  sees(x: number, y: number, z: number): boolean;
  end(): void;
}

const _place = new Vector3();
const _screen = new Vector2();

function createSlot(element: HTMLElement): Slot {
  const span = element.ownerDocument.createElement('span');
  span.className = 'stage-label';
  span.hidden = true;
  element.append(span);
  return {
    span,
    words: null,
    value: Number.NaN,
    unit: 'mm',
    tone: null,
    width: 0,
    isShown: false,
    x: Number.NaN,
    y: Number.NaN,
  };
}

function write(slot: Slot, tone: Tone, words: Words, value: number, unit: LengthUnit): void {
  const rounded = Math.round(value * 100) / 100;
  if (slot.words !== words || !Object.is(slot.value, rounded) || slot.unit !== unit) {
    slot.words = words;
    slot.value = rounded;
    slot.unit = unit;
    const text = words(value, unit);
    slot.span.textContent = text;
    slot.width = text.length * PER_CHARACTER + PADDING;
  }
  if (slot.tone !== tone) {
    slot.tone = tone;
    slot.span.dataset['tone'] = tone;
  }
}

function show(slot: Slot, x: number, y: number): void {
  if (!slot.isShown) {
    slot.isShown = true;
    slot.span.hidden = false;
  }
  const px = Math.round(x);
  const py = Math.round(y);
  if (px === slot.x && py === slot.y) return;
  slot.x = px;
  slot.y = py;
  slot.span.style.transform = `translate(${px}px, ${py}px)`;
}

function hide(slot: Slot): void {
  if (!slot.isShown) return;
  slot.isShown = false;
  slot.span.hidden = true;
}

export function createLabels(element: HTMLElement): Labels {
  const slots: Slot[] = [];
  const boxes = createBoxes(MOST);
  let used = 0;
  let camera: Camera | null = null;
  let width = 1;
  let height = 1;
  let unit: LengthUnit = 'mm';

  /** Writes where a point is drawn, px, into `_screen`; false behind the camera. */
  function project(x: number, y: number, z: number): boolean {
    if (camera === null) return false;
    toThree(x, y, z, _place).project(camera);
    _screen.set(((_place.x + 1) / 2) * width, ((1 - _place.y) / 2) * height);
    return _place.z <= 1 && _place.z >= -1;
  }

  return {
    begin(nextCamera, nextWidth, nextHeight, nextUnit) {
      camera = nextCamera;
      width = nextWidth;
      height = nextHeight;
      unit = nextUnit;
      used = 0;
      boxes.clear(0, 0, width, height);
    },
    keepInside(left, top, right, bottom) {
      boxes.clear(left, top, right, bottom);
    },
    sees(x, y, z) {
      return project(x, y, z) && boxes.holds(_screen.x, _screen.y);
    },
    put(x, y, z, tone, words, value) {
      if (used >= MOST || !project(x, y, z)) return;
      const { x: px, y: py } = _screen;
      slots[used] ??= createSlot(element);
      const slot = slots[used]!;
      write(slot, tone, words, value, unit);
      if (!boxes.place(px, py, slot.width, HEIGHT)) return;
      show(slot, boxes.left, boxes.top);
      used += 1;
    },
    end() {
      for (let i = used; i < slots.length; i += 1) hide(slots[i]!);
    },
  };
}
