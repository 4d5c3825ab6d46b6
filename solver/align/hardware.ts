/** The alignment hardware of a corner: what there is, how it stands, and how far it goes. Cams degrees, shims mm, tie rod turns. */
import { camAngle, camSlot, shimDirection, shimLimit, shimThickness } from '../model/defaults.ts';
import type { Cam, Model, Shim, Vector3 } from '../model/model.ts';

/** Cams and shims by the pivot they stand on, in the order of work. */
export const PIVOT_HARDWARE = [
  'lowerFrontCam',
  'lowerRearCam',
  'upperFrontCam',
  'upperRearCam',
  'upperFrontShim',
  'upperRearShim',
] as const;

export type PivotHardware = (typeof PIVOT_HARDWARE)[number];
export type HardwareName = PivotHardware | 'tieRod';

/** Working range of a cam, degrees each side of 0. */
export const CAM_RANGE = 90;

/**
 * Settings, absolute, on top of the file's points: cam angles in degrees and shim thicknesses in mm of the pivots that have
 * them, and the turns of the tie rod (0 where it has no pitch).
 */
export type Settings = { readonly [K in PivotHardware]?: number } & {
  readonly tieRodTurns: number;
};

/** One cam or pivot's shims as they stand. */
export interface Fitting {
  readonly name: PivotHardware;
  readonly kind: 'cam' | 'shim';
  readonly arm: 'lowerArm' | 'upperArm';
  readonly end: 'front' | 'rear';
  /** Direction it moves the pivot in, not normalised. */
  readonly direction: Vector3;
  /** Shift of the pivot per unit of travel −1 to 1 (a cam's throw) or 0 to 1 (a shim's greatest thickness), mm. */
  readonly reach: number;
  /** How it is set now: degrees or mm. */
  readonly setting: number;
  /** Least and greatest setting: ±90 degrees, or 0 to so many mm. */
  readonly range: readonly [number, number];
  /** What is counted at it, in its own unit: degrees between marks, or mm of one shim; null where the file does not say. */
  readonly step: number | null;
}

function camFitting(model: Model, name: PivotHardware): Fitting | null {
  const [arm, end] = placeOf(name);
  const cam: Cam | undefined = model[arm][`${end}Cam`];
  if (cam === undefined) return null;
  return {
    name,
    kind: 'cam',
    arm,
    end,
    direction: camSlot(cam),
    reach: cam.throw,
    setting: camAngle(cam),
    range: [-CAM_RANGE, CAM_RANGE],
    step: cam.marks === undefined ? null : 360 / cam.marks,
  };
}

function shimFitting(model: Model, name: PivotHardware): Fitting | null {
  const [, end] = placeOf(name);
  const shim: Shim | undefined = model.upperArm[`${end}Shim`];
  if (shim === undefined) return null;
  const most = shimLimit(shim);
  return {
    name,
    kind: 'shim',
    arm: 'upperArm',
    end,
    direction: shimDirection(shim),
    reach: most,
    setting: shimThickness(shim),
    range: [0, most],
    step: shim.step ?? null,
  };
}

/** The pivot a name stands for. */
export function placeOf(name: PivotHardware): readonly ['lowerArm' | 'upperArm', 'front' | 'rear'] {
  return [
    name.startsWith('lower') ? 'lowerArm' : 'upperArm',
    name.includes('Front') ? 'front' : 'rear',
  ];
}

/** Every cam and shim a model has, in the order of work. */
export function fittingsOf(model: Model): readonly Fitting[] {
  return PIVOT_HARDWARE.flatMap((name) => {
    const fitting = name.endsWith('Cam') ? camFitting(model, name) : shimFitting(model, name);
    return fitting === null ? [] : [fitting];
  });
}

/** The settings a model states. */
export function presentSettings(model: Model): Settings {
  const set = fittingsOf(model).map(({ name, setting }) => [name, setting] as const);
  return { ...Object.fromEntries(set), tieRodTurns: model.tieRod.turns ?? 0 };
}

/**
 * The model with other settings; what is left out of `settings`, or is of hardware that is not there, stays as the model
 * states it.
 */
export function withSettings(model: Model, settings: Partial<Settings>): Model {
  const { lowerFrontCam, lowerRearCam, upperFrontCam, upperRearCam } = settings;
  const { upperFrontShim, upperRearShim, tieRodTurns } = settings;
  const { lowerArm, upperArm, tieRod } = model;
  return {
    ...model,
    lowerArm: {
      ...lowerArm,
      ...turned('frontCam', lowerArm.frontCam, lowerFrontCam),
      ...turned('rearCam', lowerArm.rearCam, lowerRearCam),
    },
    upperArm: {
      ...upperArm,
      ...turned('frontCam', upperArm.frontCam, upperFrontCam),
      ...turned('rearCam', upperArm.rearCam, upperRearCam),
      ...shimmed('frontShim', upperArm.frontShim, upperFrontShim),
      ...shimmed('rearShim', upperArm.rearShim, upperRearShim),
    },
    tieRod:
      tieRodTurns === undefined || tieRod.pitch === undefined
        ? tieRod
        : { ...tieRod, turns: tieRodTurns },
  };
}

function turned(
  key: 'frontCam' | 'rearCam',
  cam: Cam | undefined,
  angle: number | undefined,
): { readonly frontCam?: Cam; readonly rearCam?: Cam } {
  return cam === undefined || angle === undefined ? {} : { [key]: { ...cam, angle } };
}

function shimmed(
  key: 'frontShim' | 'rearShim',
  shim: Shim | undefined,
  thickness: number | undefined,
): { readonly frontShim?: Shim; readonly rearShim?: Shim } {
  return shim === undefined || thickness === undefined ? {} : { [key]: { ...shim, thickness } };
}
