/** Hub, brake disc and caliper, in the wheel's axes (origin wheel centre, z outboard, x towards the rod). */
import { Matrix4 } from 'three';
import { type Model, type SectionPoint, wheelSections } from '../../../solver/index.ts';
import { wheelSpacer } from '../../../solver/model/defaults.ts';
import { CALIPER, CARRIER, DISC, HUB } from '../proportions.ts';
import { pinProfile, revolve, ringProfile } from './revolve.ts';
import { type Assembly, piece } from './solid.ts';
import { addCutFaces, STANDING } from './wheel.ts';

export interface BrakeShape {
  readonly radius: number;
  /** s of the rotor's inboard and outboard face, and of the hub face. */
  readonly low: number;
  readonly high: number;
  readonly face: number;
  /** What the caliper must stay within: radius and [s, s]. */
  readonly room: number;
  readonly within: readonly [number, number];
}

/** Disc and caliper: as large as the rim leaves room for, or as the model's envelope allows. */
export function brakeShape(model: Model): BrakeShape {
  const { offset } = model.wheel;
  const face = offset - wheelSpacer(model.wheel);
  const barrel = wheelSections(model).find(({ name }) => name === 'barrel')!;
  const radii = Array.from({ length: barrel.line.length / 2 }, (_, i) => barrel.line[2 * i + 1]!);
  const inner = Math.min(...radii) - barrel.half;
  const high = face - DISC.outboard;
  const envelope = model.brake?.section;
  if (envelope === undefined) {
    const radius = Math.min(DISC.largest, inner - DISC.roomToRim);
    return {
      radius,
      low: high - DISC.thickness,
      high,
      face,
      room: radius + CALIPER.over,
      within: [-1e4, 1e4],
    };
  }
  const room = Math.max(...envelope.map(([, radius]) => radius));
  const axial = envelope.map(([s]) => s);
  const within = [Math.min(...axial), Math.max(...axial)] as const;
  const thickness = Math.min(DISC.thickness, (within[1] - within[0]) * 0.5);
  const top = Math.min(high, within[1] - 0.2 * (within[1] - within[0]));
  const low = Math.max(top - thickness, within[0]);
  return { radius: room - CALIPER.over, low, high: low + thickness, face, room, within };
}

const HAT_WALL = 7;

/** The disc with its hat; cut open with the wheel, so that it hides nothing of what is behind it. */
export function buildRotor(model: Model, isCut: boolean): Assembly {
  const assembly: Assembly = {};
  const { radius, low, high, face } = brakeShape(model);
  const turn = isCut ? STANDING : {};
  const inner = Math.max(DISC.hat + 4, radius - DISC.width);
  const third = (high - low) * 0.32;
  const hat = Math.min(DISC.hat, radius - 20);
  const profile: SectionPoint[] = [
    [low, inner],
    [low, radius - 1.5],
    [low + 1.5, radius],
    [low + third, radius],
    [low + third, radius - 9],
    [high - third, radius - 9],
    [high - third, radius],
    [high - 1.5, radius],
    [high, radius - 1.5],
    [high, inner],
    [low, inner],
  ];
  revolve(piece(assembly, 'disc'), new Matrix4(), profile, { segments: 72, ...turn });
  // The hat: a web from the rotor inwards, then a pot out to the hub face, both with metal's thickness.
  const web = high - third - HAT_WALL;
  const pot: SectionPoint[] = [
    [web, inner + 3],
    [web + HAT_WALL, inner + 3],
    [web + HAT_WALL, hat],
    [face - 3, hat],
    [face - 0.2, hat - 3],
    [face - 0.2, HUB.barrel - 8],
    [face - HAT_WALL, HUB.barrel - 8],
    [face - HAT_WALL, hat - HAT_WALL],
    [web, hat - HAT_WALL],
    [web, inner + 3],
  ];
  pot.reverse();
  revolve(piece(assembly, 'dark'), new Matrix4(), pot, { segments: 48, ...turn });
  if (isCut) {
    addCutFaces(piece(assembly, 'cutMetal'), profile, STANDING);
    addCutFaces(piece(assembly, 'cutMetal'), pot, STANDING);
  }
  return assembly;
}

function addCaliper(assembly: Assembly, { radius, low, high, room, within }: BrakeShape): void {
  const bottom = radius - 46;
  const inboard = Math.max(within[0], low - CALIPER.cheek);
  const outboard = Math.min(within[1], high + CALIPER.cheek);
  if (inboard >= low - 2 || bottom < 20) return;
  const turn = { from: Math.PI - CALIPER.span / 2, span: CALIPER.span };
  const bridge = radius + 3;
  const section: SectionPoint[] = [
    [inboard, bottom],
    [inboard, room - 5],
    [inboard + 5, room],
    [outboard - 5, room],
    [outboard, room - 5],
    [outboard, bottom],
    [high + 2, bottom],
    [high + 2, bridge],
    [low - 2, bridge],
    [low - 2, bottom],
    [inboard, bottom],
  ];
  revolve(piece(assembly, 'caliper'), new Matrix4(), section, { segments: 64, ...turn });
  addCutFaces(piece(assembly, 'caliper'), section, turn);
}

export function buildHub(model: Model): Assembly {
  const assembly: Assembly = {};
  const shape = brakeShape(model);
  const { face } = shape;
  const at = new Matrix4();
  const steel = piece(assembly, 'steel');
  revolve(steel, at, pinProfile(HUB.barrel, face - CARRIER.inboard - 2, face - HUB.thickness + 1), {
    segments: 30,
  });
  revolve(steel, at, ringProfile(20, HUB.flange, face - HUB.thickness, face - 0.6, 2), {
    segments: 40,
  });
  revolve(steel, at, pinProfile(HUB.barrel - 4, face - 6, face + 6, 2), { segments: 30 });
  const spacer = wheelSpacer(model.wheel);
  if (spacer > 1)
    revolve(
      piece(assembly, 'alloy'),
      at,
      ringProfile(HUB.barrel, DISC.hat - 2, face, face + spacer),
      { segments: 44 },
    );
  addCaliper(assembly, shape);
  if (model.brake !== undefined) {
    revolve(piece(assembly, 'envelope'), at, model.brake.section, { segments: 48 });
  }
  return assembly;
}
