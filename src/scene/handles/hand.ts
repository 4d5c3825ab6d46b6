/** Leads pointer events to whatever is under them: the grips in order, or, where there is none, the camera's controls. */
import type { PerspectiveCamera } from 'three';
import type { Grip } from './grip.ts';
import { createPointer } from './pointer.ts';

export interface HandOptions {
  /** The stage's section: data-grip, data-held and data-way are kept on it for its cursor. */
  readonly element: HTMLElement;
  readonly canvas: HTMLCanvasElement;
  readonly camera: () => PerspectiveCamera;
  readonly grips: readonly Grip[];
  /** A drag begins: whatever moves the bench by itself stops. */
  readonly onTake: () => void;
  /** Something to be drawn has changed without the pose having changed. */
  readonly onChange: () => void;
  /** Way of the wheel's drag, for the cursor. */
  readonly way: () => string;
}

/** Listens until the returned function is called. */
export function listenToHand(options: HandOptions): () => void {
  const { element, canvas, camera, grips, onTake, onChange } = options;
  const { dataset } = element;
  const pointer = createPointer();
  let under: Grip | null = null;
  let held: Grip | null = null;
  let heldBy = -1;

  function look(): void {
    const before = under;
    under = null;
    for (const grip of grips) {
      if (under === null && grip.over(pointer)) under = grip;
      else grip.leave();
    }
    if (under !== before) {
      if (under === null) delete dataset['grip'];
      else dataset['grip'] = under.name;
    }
    if (under !== before || under?.name === 'point') onChange();
  }

  function letGo(): void {
    if (canvas.hasPointerCapture(heldBy)) canvas.releasePointerCapture(heldBy);
    held = null;
    heldBy = -1;
    delete dataset['held'];
    delete dataset['way'];
    onChange();
  }

  function down(event: PointerEvent): void {
    // A second finger never reaches the controls while the first holds something.
    if (held !== null) event.stopPropagation();
    if (held !== null || !event.isPrimary || event.button !== 0) return;
    pointer.read(event, canvas, camera());
    look();
    if (under === null) return;
    event.stopPropagation();
    event.preventDefault();
    // Focus goes where a click on the picture would take it: away from a text field.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    canvas.setPointerCapture(event.pointerId);
    held = under;
    heldBy = event.pointerId;
    dataset['held'] = '';
    onTake();
    held.take(pointer);
    onChange();
  }

  function move(event: PointerEvent): void {
    if (held !== null) {
      if (event.pointerId !== heldBy) return;
      pointer.read(event, canvas, camera());
      held.move(pointer);
      if (dataset['way'] !== options.way()) dataset['way'] = options.way();
      return;
    }
    if (event.buttons !== 0 || event.pointerType === 'touch') return;
    pointer.read(event, canvas, camera());
    look();
  }

  function up(event: PointerEvent): void {
    if (held === null || event.pointerId !== heldBy) return;
    held.drop();
    letGo();
  }

  function cancel(event: PointerEvent): void {
    if (held === null || event.pointerId !== heldBy) return;
    held.cancel();
    letGo();
  }

  function leave(): void {
    if (held !== null || under === null) return;
    for (const grip of grips) grip.leave();
    under = null;
    delete dataset['grip'];
    onChange();
  }

  function key(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || held === null) return;
    event.stopPropagation();
    event.preventDefault();
    held.cancel();
    letGo();
  }

  canvas.addEventListener('pointerdown', down, { capture: true });
  canvas.addEventListener('pointermove', move);
  canvas.addEventListener('pointerup', up);
  canvas.addEventListener('pointercancel', cancel);
  canvas.addEventListener('pointerleave', leave);
  window.addEventListener('keydown', key, { capture: true });
  return () => {
    canvas.removeEventListener('pointerdown', down, { capture: true });
    canvas.removeEventListener('pointermove', move);
    canvas.removeEventListener('pointerup', up);
    canvas.removeEventListener('pointercancel', cancel);
    canvas.removeEventListener('pointerleave', leave);
    window.removeEventListener('keydown', key, { capture: true });
  };
}
