/** The hand on a dial: a drag is one gesture of the history, so is a row of turns of the mouse's wheel, so is a key held. */
import { documentStore } from '../../state/bench.ts';
import { caught, type DialSource, pointerAngle, shortWay, stepped } from './dial.ts';

/** The hand takes hold of the dial's own when it comes down this near to it, degrees; elsewhere the dial comes to the hand. */
const NEAR = 28;
/** A row of turns of the mouse's wheel ends this long after the last, ms. */
const REST = 500;
const SENSES: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
};

interface Grip {
  readonly pointerId: number;
  /** Angle of the pointer at the last event. */
  angle: number;
  /** Where the dial would stand without catching or ends, in degrees of the hand. */
  turned: number;
}

/** Listens on the dial; returns the way out. */
export function listenToDial(dial: HTMLElement, source: DialSource): () => void {
  let grip: Grip | null = null;
  let resting: ReturnType<typeof setTimeout> | undefined;
  const perDegree = source.perTurn / 360;

  function write(value: number): void {
    if (value !== source.read()) source.write(value);
  }

  function take(event: PointerEvent): void {
    if (event.button !== 0 || grip !== null) return;
    endRow();
    dial.setPointerCapture(event.pointerId);
    documentStore.beginGesture();
    const angle = pointerAngle(dial.getBoundingClientRect(), event.clientX, event.clientY);
    const stands = source.read() / perDegree;
    const off = shortWay(angle - stands);
    const isEndless = source.most === Number.POSITIVE_INFINITY;
    const isJump = !isEndless && Math.abs(off) > NEAR;
    grip = { pointerId: event.pointerId, angle, turned: isJump ? stands + off : stands };
    if (isJump) write(caught(grip.turned * perDegree, source, event.altKey));
  }

  function turn(event: PointerEvent): void {
    if (grip === null || event.pointerId !== grip.pointerId) return;
    const angle = pointerAngle(dial.getBoundingClientRect(), event.clientX, event.clientY);
    grip.turned += shortWay(angle - grip.angle);
    grip.angle = angle;
    write(caught(grip.turned * perDegree, source, event.altKey));
  }

  function letGo(event: PointerEvent): void {
    if (grip === null || event.pointerId !== grip.pointerId) return;
    grip = null;
    if (event.type === 'pointercancel') documentStore.cancelGesture();
    else documentStore.endGesture();
  }

  function endRow(): void {
    if (resting === undefined) return;
    clearTimeout(resting);
    resting = undefined;
    documentStore.endGesture();
  }

  /** Steps, and leaves the gesture open for the next step of the row. */
  function step(sense: number, event: KeyboardEvent | WheelEvent): void {
    if (resting === undefined) documentStore.beginGesture();
    clearTimeout(resting);
    write(stepped(source, sense, event));
    resting = setTimeout(endRow, REST);
  }

  function press(event: KeyboardEvent): void {
    if (event.key === 'Escape' && grip !== null) {
      grip = null;
      documentStore.cancelGesture();
      event.preventDefault();
      return;
    }
    const sense = SENSES[event.key];
    if (sense === undefined || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    step(sense, event);
  }

  /** Only a dial that was chosen turns: the sheet under the pointer goes on scrolling. */
  function roll(event: WheelEvent): void {
    if (document.activeElement !== dial || event.deltaY === 0) return;
    event.preventDefault();
    step(event.deltaY < 0 ? 1 : -1, event);
  }

  const leaving = new AbortController();
  const { signal } = leaving;
  dial.addEventListener('pointerdown', take, { signal });
  dial.addEventListener('pointermove', turn, { signal });
  dial.addEventListener('pointerup', letGo, { signal });
  dial.addEventListener('pointercancel', letGo, { signal });
  dial.addEventListener('keydown', press, { signal });
  dial.addEventListener('keyup', endRow, { signal });
  dial.addEventListener('blur', endRow, { signal });
  dial.addEventListener('wheel', roll, { signal, passive: false });
  return () => {
    leaving.abort();
    endRow();
    if (grip !== null) documentStore.endGesture();
  };
}
