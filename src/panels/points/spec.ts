/** What every number of the format is called, what it counts, and through which range it can sensibly be slid. */
import { measuredUnitWords } from '../../../solver/model/measured.ts';

/** A length follows the unit shown; a code is a rim's inch code; everything else keeps its own unit. */
export type Kind = 'length' | 'angle' | 'code' | 'plain';

export interface Spec {
  readonly label: string;
  readonly kind: Kind;
  /** Unit behind numbers that are no lengths. */
  readonly unit?: string;
  /** Ends of the slider, in the file's unit. What is typed may lie outside: the contract judges it. */
  readonly least: number;
  readonly most: number;
  readonly step: number;
  /** Whether the slider's ends lie about the present value rather than about 0. */
  readonly isAround?: boolean;
}

function length(label: string, least: number, most: number, step = 1): Spec {
  return { label, kind: 'length', least, most, step };
}

function angle(label: string, least: number, most: number, step = 0.5): Spec {
  return { label, kind: 'angle', unit: '°', least, most, step };
}

function plain(label: string, unit: string, least: number, most: number, step: number): Spec {
  return { label, kind: 'plain', unit, least, most, step };
}

const DIAMETER = length('Diameter', 8, 90);

function cam(prefix: string, name: string): Record<string, Spec> {
  return {
    [`${prefix}.throw`]: length(`${name} cam, throw`, 0, 15, 0.5),
    [`${prefix}.angle`]: angle(`${name} cam, angle`, -90, 90, 1),
    [`${prefix}.marks`]: plain(`${name} cam, marks`, 'a turn', 1, 36, 1),
  };
}

function shim(prefix: string, name: string): Record<string, Spec> {
  return {
    [`${prefix}.thickness`]: length(`${name} shims, thickness`, 0, 15, 0.5),
    [`${prefix}.step`]: length(`${name} shims, one piece`, 0.2, 6, 0.1),
    [`${prefix}.max`]: length(`${name} shims, greatest thickness`, 1, 25, 0.5),
  };
}

/** By path, with # for a place in a list; `arm` stands for either arm. */
const SPECS: Readonly<Record<string, Spec>> = {
  'arm.tubeDiameter': length('Tube diameter', 15, 90),
  'arm.ballJointLimit': angle('Ball joint, greatest angle', 5, 45),
  ...cam('arm.frontCam', 'Front'),
  ...cam('arm.rearCam', 'Rear'),
  ...shim('arm.frontShim', 'Front'),
  ...shim('arm.rearShim', 'Rear'),
  'tieRod.diameter': length('Diameter', 10, 50),
  'tieRod.turns': plain('Turns longer', 'turns', -10, 10, 0.25),
  'tieRod.flats': plain('Flats of the adjuster', 'a turn', 2, 12, 1),
  'tieRod.pitch': length('Pitch, a turn', 0.5, 3, 0.05),
  'tieRod.endLimit': angle('Outer joint, greatest angle', 5, 45),
  'tieRod.innerLimit': angle('Inner joint, greatest angle', 5, 45),
  'hub.camber': angle('Camber, design pose', -5, 5, 0.05),
  'hub.toe': angle('Toe, design pose', -3, 3, 0.02),
  'wheel.diameter': {
    label: 'Rim diameter',
    kind: 'code',
    unit: 'in',
    least: 13,
    most: 24,
    step: 1,
  },
  'wheel.width': { label: 'Rim width', kind: 'code', unit: 'in', least: 4, most: 16, step: 0.5 },
  'wheel.offset': length('Offset', -100, 100),
  'wheel.spacer': length('Spacer', 0, 60),
  'wheel.thickness': length('Metal thickness', 3, 15, 0.5),
  'wheel.mass': plain('Mass', 'kg', 4, 30, 0.5),
  'tyre.diameter': length('Overall diameter', 450, 1100),
  'tyre.width': length('Section width', 125, 400),
  'tyre.loadedRadius': length('Loaded radius', 220, 560),
  'knuckle.tubes.#.diameter': DIAMETER,
  'coilover.diameter': length('Diameter', 30, 130),
  'coilover.minLength': length('Length, shortest', 150, 800),
  'coilover.maxLength': length('Length, longest', 200, 1100),
  'coilover.springRate': plain('Spring rate', 'N/mm', 10, 250, 1),
  'coilover.designForce': plain('Force, design pose', 'N', 0, 25000, 50),
  'antiRollBar.diameter': length('Diameter', 10, 50),
  'antiRollBar.linkDiameter': length('Drop link’s diameter', 6, 50),
  'halfShaft.diameter': length('Diameter', 15, 60),
  'halfShaft.innerLimit': angle('Inner joint, greatest angle', 5, 50),
  'halfShaft.outerLimit': angle('Outer joint, greatest angle', 5, 60),
  'halfShaft.plungeIn': length('Plunge inward, most', 0, 80),
  'halfShaft.plungeOut': length('Plunge outward, most', 0, 80),
  'strap.length': length('Length', 100, 900),
  'travel.bump': length('Bump travel', 10, 400),
  'travel.droop': length('Droop travel', 10, 400),
  'travel.ride': length('Ride height', -150, 200),
  'stops.bump': length('Bump stop met at', 5, 400),
  'stops.droop': length('Droop stop met at', 5, 400),
  'obstacles.#.diameter': DIAMETER,
  'required.default': length('Clearance wanted, any pair', 0, 40, 0.5),
  'tolerance.default': length('Uncertainty, any point', 0, 10, 0.1),
  'vehicle.wheelbase': length('Wheelbase', 1500, 5000, 5),
  'vehicle.cgHeight': length('Height of mass centre', 200, 1500, 5),
  'vehicle.frontBrakeShare': plain('Brake share, front', '', 0, 1, 0.01),
  'vehicle.frontDriveShare': plain('Drive share, front', '', 0, 1, 0.01),
  'vehicle.cornerMass': plain('Sprung mass, corner', 'kg', 50, 1500, 5),
  'targets.camber.value': angle('Camber wanted', -5, 5, 0.05),
  'targets.camber.plusMinus': angle('Camber, give or take', 0, 2, 0.05),
  'targets.caster.value': angle('Caster wanted', -5, 15, 0.1),
  'targets.caster.plusMinus': angle('Caster, give or take', 0, 2, 0.05),
  'targets.toe.value': angle('Toe wanted', -2, 2, 0.01),
  'targets.toe.plusMinus': angle('Toe, give or take', 0, 1, 0.01),
};

/** The pattern of a path: places in lists as #, either arm as `arm`. */
export function patternOf(path: string): string {
  return path
    .split('.')
    .map((key, index) => {
      if (/^\d+$/.test(key)) return '#';
      return index === 0 && /^(lower|upper)Arm$/.test(key) ? 'arm' : key;
    })
    .join('.');
}

/** An uncertainty is counted in what it is of. */
function uncertaintySpec(name: string): Spec {
  const unit = measuredUnitWords(name);
  if (unit === 'mm') return length(name, 0, 10, 0.1);
  if (unit === 'degrees') return angle(name, 0, 2, 0.01);
  return plain(name, unit === 'share of 1' ? '' : unit, 0, UNCERTAIN[unit] ?? 10, 0.01);
}

/** Ends of the sliders of uncertainties by unit. */
const UNCERTAIN: Readonly<Record<string, number>> = { N: 2000, kg: 100, 'share of 1': 0.5 };

/** The spec of a number; of one that a user named (a pair's clearance, a point's uncertainty) by its name. */
export function specOf(path: string): Spec {
  const spec = SPECS[patternOf(path)];
  if (spec !== undefined) return spec;
  const [group = '', ...rest] = path.split('.');
  const name = rest.join('.');
  if (group === 'required') return length(name.replaceAll('/', ' to '), 0, 40, 0.5);
  if (group === 'tolerance') return uncertaintySpec(name);
  throw new Error(`No number of the format stands at ${path}.`);
}

/** What the cells of a row are called and count. */
export interface RowSpec {
  readonly label: string;
  readonly cells: readonly { readonly name: string; readonly title: string; readonly spec: Spec }[];
}

/** Half the range a point's coordinate can be slid through, mm. */
const REACH = 100;

function axes(spec: Spec): RowSpec['cells'] {
  return [
    { name: 'x', title: 'forward', spec },
    { name: 'y', title: 'left', spec },
    { name: 'z', title: 'up', spec },
  ];
}

const COORDINATE: Spec = { ...length('', -REACH, REACH, 0.5), isAround: true };
const DIRECTION = plain('', '', -1, 1, 0.01);

export function pointRow(label: string): RowSpec {
  return { label, cells: axes(COORDINATE) };
}

export function directionRow(label: string): RowSpec {
  return { label, cells: axes(DIRECTION) };
}

const TURN = angle('', -180, 180, 1);

/** The row of three turns about the vehicle's axes. */
export function turnsRow(label: string): RowSpec {
  const cells = ['x', 'y', 'z'].map((name) => ({ name, title: `about ${name}`, spec: TURN }));
  return { label, cells };
}

function pairRow(
  label: string,
  first: [string, string, Spec],
  second: [string, string, Spec],
): RowSpec {
  const cells = [first, second].map(([name, title, spec]) => ({ name, title, spec }));
  return { label, cells };
}

const ALONG = length('', -250, 250, 0.5);
const RADIUS = length('', 20, 600, 0.5);

/** The row of a pair of numbers by its pattern. `place` counts from 1. */
export function pairRowOf(pattern: string, place: number): RowSpec {
  if (pattern === 'steering.limit') {
    return pairRow(
      'Rack travel',
      ['right', 'least', length('', -120, 0)],
      ['left', 'most', length('', 0, 120)],
    );
  }
  if (pattern === 'tieRod.profile.#') {
    return pairRow(
      `Profile, step ${place}`,
      ['from', 'from the outer joint', length('', 0, 300)],
      ['ø', 'diameter from there', DIAMETER],
    );
  }
  const part =
    { 'wheel.section.#': 'Rim', 'wheel.disc.#': 'Disc', 'wheel.weights.#': 'Weights' }[pattern] ??
    'Envelope';
  return pairRow(
    `${part}, point ${place}`,
    ['s', 'outboard of the wheel’s middle', ALONG],
    ['ρ', 'radius', RADIUS],
  );
}
