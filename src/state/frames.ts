/**
 * One animation frame for everything that writes to the page by hand: however many changes come before it, each callback
 * runs once in it, and none runs while nothing changes. A frame allocates nothing of its own.
 */

export type FrameCallback = () => void;

/** Calls back before the next picture: the browser's requestAnimationFrame, or a test's. */
export type Schedule = (run: () => void) => void;

export type Frames = ReturnType<typeof createFrames>;

export function createFrames(schedule: Schedule) {
  /** Replaced, never changed in place: a callback may leave while the frame runs. */
  let callbacks: readonly FrameCallback[] = [];
  let asked = false;

  function run(): void {
    asked = false;
    const now = callbacks;
    for (let i = 0; i < now.length; i += 1) {
      try {
        now[i]?.();
      } catch (error) {
        // The others still get their frame; the page's own error report says what went wrong.
        reportError(error);
      }
    }
  }

  /** Asks for a frame; asking again before it comes changes nothing. */
  function requestFrame(): void {
    if (asked || callbacks.length === 0) return;
    asked = true;
    schedule(run);
  }

  /** Calls back once in every frame that is asked for, the next one included; returns the way out. */
  function onFrame(callback: FrameCallback): () => void {
    const own = (): void => callback();
    callbacks = [...callbacks, own];
    requestFrame();
    return () => {
      callbacks = callbacks.filter((other) => other !== own);
    };
  }

  return { onFrame, requestFrame };
}
