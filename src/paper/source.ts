/** What papers are made from: a design at its set pose, and how it is wished on paper. */
import {
  assemble,
  type Corner,
  type CycleGrid,
  createMeasures,
  createPose,
  Measure,
  type MeasureKey,
  type Model,
  measureInto,
  solve,
} from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';
import type { LengthUnit } from '../words/lengthUnit.ts';
import type { PaperSize } from './paperSize.ts';

export interface PaperSettings {
  readonly paper: PaperSize;
  readonly unit: LengthUnit;
  /** The date as it is printed; empty leaves a place to write it. */
  readonly date: string;
}

/** A solved and measured pose. */
export interface Reading {
  readonly data: Float64Array;
  /** NaN for a measure that lacks its parts. */
  at(key: MeasureKey): number;
}

export interface PaperSource {
  readonly model: Model;
  readonly corner: Corner;
  readonly settings: PaperSettings;
  readonly ride: number;
  /** Travel = ride, rack 0, settings applied; null where the corner cannot stand so. */
  readonly set: Reading | null;
  /** The 15 cells. */
  readonly cycle: CycleGrid;
}

/** The pose at (travel, rack), mm; null out of reach. */
export function readingAt(corner: Corner, travel: number, rack: number): Reading | null {
  const pose = createPose();
  if (solve(corner, pose, travel, rack) !== 'reached') return null;
  const measures = createMeasures();
  measureInto(corner, pose, measures);
  return { data: pose.data, at: (key) => measures[Measure[key]] ?? Number.NaN };
}

export function paperSource(model: Model, cycle: CycleGrid, settings: PaperSettings): PaperSource {
  const corner = assemble(model);
  const ride = rideTravel(model.travel);
  return { model, corner, settings, ride, set: readingAt(corner, ride, 0), cycle };
}
