/** What a still picture is drawn from. */
import type { Aim, Best, Ideal, Known, Picture, Reach, Vector3 } from '../../../solver/index.ts';
import type { Inks } from '../../charts/paper.ts';
import type { LengthUnit, Theme } from '../../state/view.ts';
import type { PaperFrame } from './paperFrame.ts';

export interface PlaceDrawing {
  readonly frame: PaperFrame;
  readonly picture: Picture;
  readonly aim: Aim;
  readonly limit: number;
  readonly ideal: Ideal | null;
  readonly known: Known | null;
  readonly present: Vector3;
  /** Where the held design has the point; null where it is held nowhere else. */
  readonly held: Vector3 | null;
  readonly reach: Reach;
  readonly bests: readonly Best[];
  readonly unit: LengthUnit;
  readonly theme: Theme;
  readonly inks: Inks;
}

export type Pen = CanvasRenderingContext2D;

/** A point of the paper, CSS pixels. */
export type Spot = readonly [number, number];
