/**
 * How finely the picture is drawn while it moves. Where frames come late (software drawing is bound by pixels), the
 * moving picture is drawn coarser; at rest it is always drawn at full resolution.
 */

/** A frame is late this long, ms, after it was asked for: under 25 pictures a second. */
const LATE = 40;
/** Late frames in a row before the picture gets coarser, so that one hiccup changes nothing. */
const PATIENCE = 3;
/** Resolutions tried, as parts of the full one. */
const SCALES = [1, 0.7, 0.5] as const;

export interface Pace {
  /** Notes that a frame was asked for at `time`, ms; only the first since the last frame counts. */
  asked(time: number): void;
  /** Notes that a frame is drawn at `time`, ms; returns the scale to draw at. */
  drawn(time: number): number;
  /** Full resolution again: the picture rests. The coarser scale is remembered for the next motion. */
  rested(): number;
}

export function createPace(): Pace {
  let since = Number.NaN;
  let late = 0;
  let level = 0;
  return {
    asked(time) {
      if (Number.isNaN(since)) since = time;
    },
    drawn(time) {
      if (!Number.isNaN(since)) late = time - since > LATE ? late + 1 : 0;
      since = Number.NaN;
      if (late >= PATIENCE && level < SCALES.length - 1) {
        level += 1;
        late = 0;
      }
      return SCALES[level] ?? 1;
    },
    rested() {
      since = Number.NaN;
      late = 0;
      return 1;
    },
  };
}
