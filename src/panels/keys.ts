/** The bench's keys. None acts while something is typed, chosen from a list, or read in a sheet. */
import { documentStore, inputs, view } from '../state/bench.ts';
import { steerSense } from '../state/steerSense.ts';
import type { Shell } from '../state/view.ts';
import { VIEWPOINTS } from './choices.tsx';
import { togglePlay } from './cycle.ts';
import { explained, stopExplaining } from './explain.ts';
import { toggleHold } from './hold.ts';
import { openSheet, sheets } from './sheets.ts';
import { keyStep } from './steps.ts';

const TYPED =
  'input:not([type="checkbox"], [type="radio"], [type="range"]), textarea, select, [contenteditable]';
/** A length whose field is at rest has nothing of its own to undo. */
const RESTING = '.slide-figure:not([data-typing])';
/** What Space presses or ticks. */
const PRESSED = 'button, a, summary, label, input, [role="menuitem"]';
/** What has a first of its own. */
const LISTED = '[role="tablist"], [role="menu"], [role="listbox"]';
/** What has arrows of its own. */
const ARROWED = `[type="range"], [role="slider"], [role="application"], ${LISTED}`;
/** What lies over everything and closes itself on Escape, and a slider that a hand holds and Escape takes back. */
const OVER = 'dialog[open], :popover-open, .map-large, [type="range"]:active';

function isIn(target: EventTarget | null, selector: string): boolean {
  return target instanceof Element && target.closest(selector) !== null;
}

function toggleShell(shell: Shell): void {
  view.setState({ wheelShell: view.getState().wheelShell === shell ? 'solid' : shell });
}

/** Arrows, Home. Left and right steer, as they do on the map, whichever way the rack must go for it. */
function moveKey(event: KeyboardEvent): boolean {
  // On a slider too: an end of its range would be no place that anyone asked for.
  if (event.key === 'Home' && !isIn(event.target, LISTED)) {
    inputs.move(0, 0);
    return true;
  }
  if (isIn(event.target, ARROWED)) return false;
  const { travel, rack } = inputs.getState();
  const step = keyStep(event, view.getState().unit);
  if (event.key === 'ArrowUp') inputs.setTravel(travel + step);
  else if (event.key === 'ArrowDown') inputs.setTravel(travel - step);
  else if (event.key === 'ArrowLeft') inputs.setRack(rack + steerSense() * step);
  else if (event.key === 'ArrowRight') inputs.setRack(rack - steerSense() * step);
  else return false;
  return true;
}

/** Single keys. */
function plainKey(event: KeyboardEvent): boolean {
  const viewpoint = VIEWPOINTS[Number(event.key) - 1]?.[0];
  if (viewpoint !== undefined) view.look(viewpoint);
  else if (event.key === '?') openSheet('help');
  else if (event.key === ' ' && !isIn(event.target, PRESSED)) togglePlay();
  else if (event.key.toLowerCase() === 'g') toggleShell('ghost');
  else if (event.key.toLowerCase() === 'c') toggleShell('cut');
  else if (event.key.toLowerCase() === 'h') toggleHold();
  else return false;
  return true;
}

/** Ctrl or Command with Z or Y. */
function historyKey(event: KeyboardEvent): boolean {
  const key = event.key.toLowerCase();
  if (key === 'y' || (key === 'z' && event.shiftKey)) documentStore.redo();
  else if (key === 'z') documentStore.undo();
  else return false;
  return true;
}

function onKey(event: KeyboardEvent): void {
  const isExplained = explained.getState().now !== null;
  if (event.key === 'Escape') stopExplaining();
  if (event.defaultPrevented || sheets.getState().open !== null) return;
  const isTyped = isIn(event.target, TYPED);
  if (event.key === 'Escape') {
    if (isTyped && event.target instanceof HTMLElement) event.target.blur();
    else if (!isExplained && document.querySelector(OVER) === null) view.closeLast();
    return;
  }
  let isDone = false;
  if (event.ctrlKey || event.metaKey) {
    isDone = (!isTyped || isIn(event.target, RESTING)) && historyKey(event);
  } else if (!isTyped) {
    isDone = moveKey(event) || (!event.altKey && !event.repeat && plainKey(event));
  }
  if (isDone) event.preventDefault();
}

/** Listens until the returned function is called. */
export function listenToKeys(): () => void {
  addEventListener('keydown', onKey);
  return () => removeEventListener('keydown', onKey);
}
