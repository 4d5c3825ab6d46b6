/**
 * Numbers of a model, beside the coordinates of its points, that somebody measured or read off a part: each may have an
 * uncertainty of its own under its path in `tolerance`. `tolerance.default` speaks of coordinates only.
 */
import type { Arm, Model } from './model.ts';

/** What a measured number is counted in; its uncertainty is in the same unit. */
export type MeasuredUnit =
  | 'mm'
  | 'degree'
  | 'mmPerTurn'
  | 'newton'
  | 'newtonPerMm'
  | 'kilogram'
  | 'share';

export interface MeasuredNumber {
  /** Dotted path in the model file. */
  readonly path: string;
  readonly unit: MeasuredUnit;
  /** As people call it, after the name of its part. */
  readonly label: string;
}

function number(path: string, unit: MeasuredUnit, label: string): MeasuredNumber {
  return { path, unit, label };
}

function cams(name: 'lowerArm' | 'upperArm', arm: Arm): MeasuredNumber[] {
  return (['front', 'rear'] as const)
    .filter((end) => arm[`${end}Cam`] !== undefined)
    .map((end) => number(`${name}.${end}Cam.throw`, 'mm', `${end} cam’s throw`));
}

function springNumbers({ coilover, strap }: Model): MeasuredNumber[] {
  return [
    ...(coilover?.springRate === undefined
      ? []
      : [number('coilover.springRate', 'newtonPerMm', 'spring rate')]),
    ...(coilover?.designForce === undefined
      ? []
      : [number('coilover.designForce', 'newton', 'force in the design pose')]),
    ...(strap === undefined ? [] : [number('strap.length', 'mm', 'length')]),
  ];
}

const VEHICLE: readonly MeasuredNumber[] = [
  number('vehicle.wheelbase', 'mm', 'wheelbase'),
  number('vehicle.cgHeight', 'mm', 'height of the mass centre'),
  number('vehicle.frontBrakeShare', 'share', 'brake share, front'),
  number('vehicle.frontDriveShare', 'share', 'drive share, front'),
  number('vehicle.cornerMass', 'kilogram', 'sprung mass of the corner'),
];

/** The measured numbers of a model in the format's order; those with a default are there though the file may leave them out. */
export function measuredNumbers(model: Model): readonly MeasuredNumber[] {
  return [
    ...cams('lowerArm', model.lowerArm),
    ...cams('upperArm', model.upperArm),
    ...(model.tieRod.pitch === undefined
      ? []
      : [number('tieRod.pitch', 'mmPerTurn', 'pitch, a turn')]),
    number('hub.camber', 'degree', 'camber, design pose'),
    number('hub.toe', 'degree', 'toe, design pose'),
    number('wheel.offset', 'mm', 'offset'),
    number('wheel.spacer', 'mm', 'spacer'),
    number('tyre.loadedRadius', 'mm', 'loaded radius'),
    ...springNumbers(model),
    ...(model.vehicle === undefined ? [] : VEHICLE),
  ];
}

/** The three coordinates of a point as the last key of a path. */
export const COORDINATES = ['x', 'y', 'z'] as const;

const UNIT_WORDS: Readonly<Record<string, string>> = {
  'hub.camber': 'degrees',
  'hub.toe': 'degrees',
  'tieRod.pitch': 'mm per turn',
  'coilover.springRate': 'N/mm',
  'coilover.designForce': 'N',
  'vehicle.frontBrakeShare': 'share of 1',
  'vehicle.frontDriveShare': 'share of 1',
  'vehicle.cornerMass': 'kg',
};

/** The unit of the uncertainty under a key of `tolerance`, as a message says it. */
export function measuredUnitWords(key: string): string {
  return UNIT_WORDS[key] ?? 'mm';
}
