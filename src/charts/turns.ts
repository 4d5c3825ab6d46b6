/**
 * Small curves take turns: one is drawn anew a frame, so that a rack drag never pays for all of them at once. Who was
 * put off comes before who was not.
 */
let taken: CSSNumberish | null = null;
const waiting = new Set<object>();

/** True when it is this curve's turn in the present animation frame; else it waits and asks again in the next one. */
export function takeTurn(curve: object): boolean {
  const now = document.timeline.currentTime;
  const [first] = waiting;
  const isFree = now === null || now !== taken;
  if (!isFree || (first !== undefined && first !== curve)) {
    waiting.add(curve);
    return false;
  }
  waiting.delete(curve);
  taken = now;
  return true;
}

/** A curve that goes waits no longer. */
export function leaveTurns(curve: object): void {
  waiting.delete(curve);
}
