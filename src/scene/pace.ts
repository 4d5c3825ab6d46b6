/**
 * How finely the picture is drawn while it moves. Where frames come late (software drawing is bound by pixels), the
 * moving picture is drawn coarser; at rest it is always drawn at its full resolution.
 */

/** A frame is late this long, ms, after it was asked for: under 25 pictures a second. */
const LATE = 40;
/** Late frames in a row before the picture gets coarser, so that one hiccup changes nothing. */
const PATIENCE = 3;
/** Resolutions tried while something moves, as parts of the plain one. */
const SCALES = [1, 0.7, 0.5, 0.4] as const;

export interface Pace {
  /** Resolution of the picture at rest, as a multiple of the plain one. */
  readonly rest: number;
  /** Whether a moving picture can afford its shadows: not where it is drawn by the processor. */
  readonly isQuick: boolean;
  /** Notes at `time`, ms, that something moves and a frame is asked for; only the first since the last frame counts. */
  asked(time: number): void;
  /** Notes that a frame is drawn at `time`, ms; returns the scale to draw at, or null when nothing has moved. */
  drawn(time: number): number | null;
}

/**
 * Makes a pace. Software drawing begins coarser in motion; having no smoothing of edges of its own, it is drawn finer
 * than the screen at rest.
 */
export function createPace(isSoftware: boolean): Pace {
  let since = Number.NaN;
  let late = 0;
  let level = isSoftware ? 2 : 0;
  return {
    rest: isSoftware ? 1.5 : 1,
    isQuick: !isSoftware,
    asked(time) {
      if (Number.isNaN(since)) since = time;
    },
    drawn(time) {
      if (Number.isNaN(since)) return null;
      late = time - since > LATE ? late + 1 : 0;
      since = Number.NaN;
      if (late >= PATIENCE && level < SCALES.length - 1) {
        level += 1;
        late = 0;
      }
      return SCALES[level] ?? 1;
    },
  };
}
