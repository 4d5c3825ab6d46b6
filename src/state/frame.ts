/** The page's animation frame, wired to the bench: a stale pose or another unit of length asks for one. */
import { posed, view } from './bench.ts';
import { createFrames } from './frames.ts';

const frames = createFrames((run) => {
  requestAnimationFrame(run);
});

export const { onFrame, requestFrame } = frames;

posed.subscribe(requestFrame);
view.subscribe((state, before) => {
  if (state.unit !== before.unit) requestFrame();
});
