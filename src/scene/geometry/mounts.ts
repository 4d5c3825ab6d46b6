/** What is fixed to the body: the ears, bolts and cams of the arms' pivots, the coilover's top and the strap's. Vehicle axes. */
import { Matrix4, Vector3 } from 'three';
import type { Cam, Corner, Model, Shim } from '../../../solver/index.ts';
import { camAngle, camSlot, tubeDiameter } from '../../../solver/model/defaults.ts';
import { BUSH, CAM, DAMPER, EAR, STRAP } from '../proportions.ts';
import { addBarClamp } from './antiRollBar.ts';
import { addInnerCup } from './halfShaft.ts';
import { addPlate, block } from './plate.ts';
import { addHex, addPin, pinProfile, revolve } from './revolve.ts';
import { addShims } from './shims.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';
import { strapAside } from './strap.ts';

interface PivotPlace {
  readonly at: Vector3;
  readonly axis: Vector3;
  readonly tube: number;
  readonly cam: Cam | undefined;
  readonly shim: Shim | undefined;
}

function pivotPlaces({ model, linkage }: Corner): PivotPlace[] {
  const { pivots } = linkage;
  return (['lowerArm', 'upperArm'] as const).flatMap((name) => {
    const lower = name === 'lowerArm';
    const front = toVector(lower ? pivots.lowerFront : pivots.upperFront);
    const rear = toVector(lower ? pivots.lowerRear : pivots.upperRear);
    const axis = front.clone().sub(rear).normalize();
    const tube = tubeDiameter(model, name);
    const shimOf = (end: 'front' | 'rear') => (lower ? undefined : model.upperArm[`${end}Shim`]);
    return [
      { at: front, axis, tube, cam: model[name].frontCam, shim: shimOf('front') },
      { at: rear, axis, tube, cam: model[name].rearCam, shim: shimOf('rear') },
    ];
  });
}

/** Outline of an ear: round about the bolt, square towards the body. x is the way to the body. */
export function earOutline(radius: number, reach: number): [number, number][] {
  const round = Array.from({ length: 9 }, (_, i): [number, number] => {
    const angle = Math.PI / 2 + (Math.PI * i) / 8;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  return [...round, [reach, -radius * 1.15], [reach, radius * 1.15]];
}

/** Way from a pivot to the body: inboard, square to the pivots' axis. */
function inboard(axis: Vector3): Vector3 {
  const way = new Vector3(0, -1, 0);
  way.addScaledVector(axis, -way.dot(axis));
  return way.lengthSq() > 1e-6 ? way.normalize() : new Vector3(1, 0, 0);
}

function addPivot(assembly: Assembly, { at, axis, tube, cam, shim }: PivotPlace): void {
  const half = (BUSH.length * tube) / 2 + 4;
  const frame = axisFrame(at, axis, inboard(axis));
  const radius = Math.max(0.5 * tube, 15);
  const reach = EAR.reach * tube;
  const outline = earOutline(radius, reach);
  const fixed = piece(assembly, 'fixed');
  for (const low of [half, -half - EAR.thickness])
    addPlate(fixed, frame, outline, low, low + EAR.thickness);
  const back = frame.clone().multiply(new Matrix4().makeTranslation(reach, 0, 0));
  addPlate(fixed, back, block(6, 2.4 * radius, 1), -half - EAR.thickness, half + EAR.thickness);
  if (shim !== undefined) {
    const width = 2 * (half + EAR.thickness);
    addShims(piece(assembly, 'steel'), frame, shim, reach, 2.4 * radius, width);
  }
  const end = half + EAR.thickness + (cam === undefined ? 0 : CAM.thickness);
  const bolt = Math.max(5, BUSH.bolt * tube);
  const steel = piece(assembly, 'steel');
  addPin(
    steel,
    at.clone().addScaledVector(axis, -end - 12),
    at.clone().addScaledVector(axis, end + 4),
    bolt,
    14,
  );
  addHex(steel, frame, 1.75 * bolt, end, end + 1.2 * bolt);
  addHex(steel, frame, 1.75 * bolt, -end - 1.2 * bolt, -end);
  if (cam !== undefined) addCam(assembly, at, axis, half + EAR.thickness, cam);
}

/**
 * Eccentric washers on both ears, turned by the cam's angle. Their rims stay between two guides that stand along the
 * slot: the washer's centre is throw·cos(angle) off the bolt, square to the slot; the bolt itself has moved along it.
 */
function addCam(assembly: Assembly, at: Vector3, axis: Vector3, from: number, cam: Cam): void {
  const slot = toVector(camSlot(cam)).normalize();
  slot.addScaledVector(axis, -slot.dot(axis)).normalize();
  const square = new Vector3().crossVectors(axis, slot);
  const angle = (camAngle(cam) * Math.PI) / 180;
  const centre = at
    .clone()
    .addScaledVector(slot, -cam.throw * Math.sin(angle))
    .addScaledVector(square, -cam.throw * Math.cos(angle));
  const mark = slot
    .clone()
    .multiplyScalar(Math.sin(angle))
    .addScaledVector(square, Math.cos(angle));
  for (const sense of [1, -1]) {
    const washer = axisFrame(centre, axis.clone().multiplyScalar(sense), slot);
    const radius = CAM.radius + cam.throw * 0.4;
    revolve(piece(assembly, 'steel'), washer, pinProfile(radius, from, from + CAM.thickness, 1), {
      segments: 34,
    });
    const notch = centre
      .clone()
      .addScaledVector(mark, 0.62 * radius)
      .addScaledVector(axis, sense * (from + CAM.thickness));
    const rim = centre
      .clone()
      .addScaledVector(mark, radius)
      .addScaledVector(axis, sense * (from + CAM.thickness));
    addPin(piece(assembly, 'dark'), notch, rim, 2, 8);
    for (const side of [1, -1]) {
      const guide = centre
        .clone()
        .addScaledVector(slot, side * (radius + 3.5))
        .addScaledVector(axis, sense * (from + CAM.thickness / 2));
      addPlate(
        piece(assembly, 'fixed'),
        axisFrame(guide, axis, slot),
        block(5, 1.5 * radius, 1),
        -CAM.thickness / 2,
        CAM.thickness / 2,
      );
    }
  }
}

/** Ears and bolt of the coilover's top, along the damper's design direction. */
function addTop(assembly: Assembly, model: Model): void {
  const top = toVector(model.coilover!.top);
  const up = top.clone().sub(toVector(model.coilover!.bottom)).normalize();
  const across = new Vector3(1, 0, 0).addScaledVector(up, -up.x).normalize();
  const radius = DAMPER.eye + 2;
  const frame = axisFrame(top, across, up);
  const outline = earOutline(radius, radius + 14);
  const fixed = piece(assembly, 'fixed');
  for (const low of [17, -17 - EAR.thickness])
    addPlate(fixed, frame, outline, low, low + EAR.thickness);
  const back = frame.clone().multiply(new Matrix4().makeTranslation(radius + 17, 0, 0));
  addPlate(
    fixed,
    back,
    block(8, 2.6 * radius, 1.5),
    -17 - 2 * EAR.thickness,
    17 + 2 * EAR.thickness,
  );
  addPin(
    piece(assembly, 'steel'),
    top.clone().addScaledVector(across, -32),
    top.clone().addScaledVector(across, 32),
    7,
    14,
  );
  for (const sense of [1, -1]) {
    const at = axisFrame(top, across.clone().multiplyScalar(sense));
    addHex(piece(assembly, 'steel'), at, 12, 17 + EAR.thickness, 17 + EAR.thickness + 8);
  }
}

/** Ears and pin of the limit strap's top, the pin along the ribbon's width. */
function addStrapTop(assembly: Assembly, { strap, coilover }: Model): void {
  const top = toVector(strap!.top);
  const up = new Vector3(0, 0, 1);
  const beside = coilover === undefined ? null : toVector(coilover.top);
  const across = strapAside({ top }, beside).cross(up).normalize();
  const half = STRAP.width / 2 + 3;
  const frame = axisFrame(top, across, up);
  const fixed = piece(assembly, 'fixed');
  for (const low of [half, -half - EAR.thickness])
    addPlate(fixed, frame, earOutline(STRAP.ear, 1.9 * STRAP.ear), low, low + EAR.thickness);
  const back = frame.clone().multiply(new Matrix4().makeTranslation(1.9 * STRAP.ear, 0, 0));
  addPlate(fixed, back, block(6, 2.4 * STRAP.ear, 1), -half - EAR.thickness, half + EAR.thickness);
  const reach = half + EAR.thickness + 6;
  addPin(
    piece(assembly, 'steel'),
    top.clone().addScaledVector(across, -reach),
    top.clone().addScaledVector(across, reach),
    STRAP.pin,
    14,
  );
}

export function buildMounts(corner: Corner): Assembly {
  const assembly: Assembly = {};
  for (const place of pivotPlaces(corner)) addPivot(assembly, place);
  if (corner.model.coilover !== undefined) addTop(assembly, corner.model);
  if (corner.model.halfShaft !== undefined) addInnerCup(assembly, corner.model);
  addBarClamp(assembly, corner.model);
  if (corner.model.strap !== undefined) addStrapTop(assembly, corner.model);
  return assembly;
}
