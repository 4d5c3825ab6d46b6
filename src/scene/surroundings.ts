/** What the parts of one open stage share: its elements, its corner's extent, and what the hand is doing. Not React state. */
import { inputs, posed } from '../state/bench.ts';
import { type Extent, extentOf } from './camera/extent.ts';
import { createLabels, type Labels } from './labels/labels.ts';

export interface Surroundings {
  /** The stage's section, which carries its data attributes. */
  readonly element: HTMLElement;
  readonly canvas: HTMLCanvasElement;
  /** The text over the picture. */
  readonly labels: Labels;
  /** To be called when the camera moves: moving pictures may be drawn coarser. */
  readonly moving: () => void;
  /** True while a hand holds the wheel, a point or the camera, or a cycle plays: nothing is drawn finely between two moves. */
  isHeld(): boolean;
  /** The camera's controls say whether a hand holds it. */
  holdCamera(isHeld: boolean): void;
  /** The extent of the present model; worked out anew when the model has changed. */
  extent(): Extent;
}

export function createStageSurroundings(
  element: HTMLElement,
  canvas: HTMLCanvasElement,
  labels: HTMLElement,
  moving: () => void,
): Surroundings {
  let of = posed.current().corner;
  let extent = extentOf(of);
  let isCameraHeld = false;
  return {
    element,
    canvas,
    labels: createLabels(labels),
    moving,
    isHeld: () =>
      isCameraHeld || element.dataset['held'] !== undefined || inputs.getState().playing !== null,
    holdCamera(isHeld) {
      isCameraHeld = isHeld;
    },
    extent() {
      const { corner } = posed.current();
      if (corner !== of) {
        of = corner;
        extent = extentOf(corner);
      }
      return extent;
    },
  };
}
