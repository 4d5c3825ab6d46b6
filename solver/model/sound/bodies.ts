/** Whether the points of a model make bodies a linkage can be assembled from. Each rule refuses only what no corner can have. */
import { cross, distance, dot, length, rejectFrom, subtract, unit } from '../../math/vec3.ts';
import { degrees } from '../../units.ts';
import { tieRodStudAxis } from '../defaults.ts';
import type { AntiRollBar, Arm, Model, TieRod, Vector3 } from '../model.ts';
import { refuse } from '../read/reader.ts';

/** Points closer than this, mm, are one point: no joint of a vehicle is so small. */
const NEAREST = 1;

/** Sine of the least angle between a rod and its stud, a twentieth of a degree: below it the rod's frame is noise. */
const LEAST_STUD_SINE = 1e-3;

/** A length as a message shows it. */
function millimetres(value: number): string {
  return `${Number(value.toFixed(3))} mm`;
}

function refuseNear(path: string, a: Vector3, b: Vector3, name: string): void {
  const gap = distance(a, b);
  if (gap < NEAREST) {
    refuse(path, `a point ${millimetres(gap)} from ${name}`, `at least ${NEAREST} mm between them`);
  }
}

/** Distance of a point from the line through two others that differ. */
function offLine(point: Vector3, from: Vector3, to: Vector3): number {
  return length(rejectFrom(subtract(point, from), unit(subtract(to, from))));
}

function refuseOnLine(
  path: string,
  point: Vector3,
  line: readonly [Vector3, Vector3],
  name: string,
): void {
  const gap = offLine(point, line[0], line[1]);
  if (gap < NEAREST) {
    refuse(path, `a point ${millimetres(gap)} from ${name}`, `at least ${NEAREST} mm off it`);
  }
}

function checkArm(name: 'lowerArm' | 'upperArm', arm: Arm): void {
  refuseNear(`${name}.rearPivot`, arm.rearPivot, arm.frontPivot, `${name}.frontPivot`);
  refuseOnLine(
    `${name}.ballJoint`,
    arm.ballJoint,
    [arm.frontPivot, arm.rearPivot],
    "the line through the arm's pivots",
  );
}

function checkSteeringAxis(lower: Vector3, upper: Vector3): void {
  refuseNear('upperArm.ballJoint', upper, lower, 'lowerArm.ballJoint');
  const rise = Math.abs(upper[2] - lower[2]);
  if (rise < NEAREST) {
    refuse(
      'upperArm.ballJoint[2]',
      `a height ${millimetres(rise)} from that of lowerArm.ballJoint`,
      `at least ${NEAREST} mm: a steering axis that is not level`,
    );
  }
}

function checkTieRod(tieRod: TieRod, lower: Vector3, upper: Vector3): void {
  refuseNear('tieRod.outer', tieRod.outer, tieRod.inner, 'tieRod.inner');
  refuseOnLine('tieRod.outer', tieRod.outer, [lower, upper], 'the steering axis');
  const rod = unit(subtract(tieRod.outer, tieRod.inner));
  const stud = unit(tieRodStudAxis(tieRod));
  const sine = length(cross(rod, stud));
  if (sine < LEAST_STUD_SINE) {
    const angle = Number(degrees(Math.atan2(sine, Math.abs(dot(rod, stud)))).toFixed(3));
    refuse(
      'tieRod.studAxis',
      `${tieRod.studAxis ? 'an axis' : 'the upright default'} ${angle} degrees from the rod`,
      'an axis across the rod',
    );
  }
}

function checkTurns(tieRod: TieRod): void {
  if (tieRod.turns !== undefined && tieRod.turns !== 0 && tieRod.pitch === undefined) {
    refuse(
      'tieRod.pitch',
      `nothing, with ${tieRod.turns} turns`,
      'the mm per turn that turns need',
    );
  }
}

function checkShims({ upperArm }: Model): void {
  for (const end of ['front', 'rear'] as const) {
    const shim = upperArm[`${end}Shim`];
    if (shim === undefined) continue;
    const path = `upperArm.${end}Shim`;
    if (upperArm[`${end}Cam`] !== undefined) {
      refuse(path, `a shim beside upperArm.${end}Cam`, 'a cam or a shim on a pivot, not both');
    }
    const { thickness = 0, max } = shim;
    if (max !== undefined && thickness > max) {
      refuse(`${path}.thickness`, String(thickness), `at most max, ${max}`);
    }
  }
}

function checkAntiRollBar(bar: AntiRollBar): void {
  refuseNear('antiRollBar.axis[1]', bar.axis[1], bar.axis[0], 'antiRollBar.axis[0]');
  refuseOnLine('antiRollBar.leverEnd', bar.leverEnd, bar.axis, "the bar's axis");
  refuseNear('antiRollBar.link', bar.link, bar.leverEnd, 'antiRollBar.leverEnd');
  const axis = unit(subtract(bar.axis[1], bar.axis[0]));
  const across = unit(cross(axis, subtract(bar.leverEnd, bar.axis[0])));
  const gap = Math.abs(dot(across, subtract(bar.link, bar.axis[0])));
  if (gap < NEAREST) {
    refuse(
      'antiRollBar.link',
      `a drop link in line with its lever (${millimetres(gap)} off)`,
      `at least ${NEAREST} mm off the plane of the bar's axis and leverEnd`,
    );
  }
}

/** Refuses a model whose points no linkage can be assembled from, in the order of the format's table. */
export function checkBodies(model: Model): void {
  const lower = model.lowerArm.ballJoint;
  const upper = model.upperArm.ballJoint;
  checkArm('lowerArm', model.lowerArm);
  checkArm('upperArm', model.upperArm);
  checkSteeringAxis(lower, upper);
  checkTieRod(model.tieRod, lower, upper);
  checkTurns(model.tieRod);
  checkShims(model);
  const { coilover, antiRollBar, halfShaft } = model;
  if (coilover) {
    refuseNear('coilover.bottom', coilover.bottom, coilover.top, 'coilover.top');
    const { minLength, maxLength } = coilover;
    if (minLength !== undefined && maxLength !== undefined && minLength >= maxLength) {
      refuse('coilover.maxLength', String(maxLength), `more than minLength, ${minLength}`);
    }
  }
  if (antiRollBar) checkAntiRollBar(antiRollBar);
  if (halfShaft) refuseNear('halfShaft.outer', halfShaft.outer, halfShaft.inner, 'halfShaft.inner');
}
