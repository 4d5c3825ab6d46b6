/** The parts between which clearances are watched, as shapes: thick polylines, sections of revolution, boxes, meshes. */
import type { Corner } from '../corner.ts';
import { BODIES, type Body } from '../linkage/bodies.ts';
import { Slot } from '../linkage/slots.ts';
import { coiloverDiameter, linkDiameter, shaftDiameter } from '../model/defaults.ts';
import type { Carrier, Obstacle, Vector3 } from '../model/model.ts';
import type { PART_NAMES } from '../model/sound/names.ts';
import type { MeshSurface, MeshSurfaces } from './mesh.ts';
import { brakeSections, type Section, tyreSections, wheelSections } from './section.ts';
import { armStrand, knuckleStrands, rodStrand, type Strand, tubeStrand } from './strands.ts';

/** A part that clearances are watched of; an obstacle goes by its own name instead. */
export type ClearancePart = (typeof PART_NAMES)[number];

/** What a shape is fixed to: the vehicle, or one of the corner's moving bodies. */
export type ShapeBody = 'vehicle' | Carrier | 'tieRod';

/**
 * Thick polylines fixed to one body. Their straight pieces are constant in the body, and convex hulls of a piece's two
 * ends hold its centreline, so what bounds the motion of the points bounds that of all of it.
 */
export interface ChainShape {
  readonly kind: 'chain';
  readonly name: string;
  readonly body: ShapeBody;
  readonly strands: readonly Strand[];
}

/** One end of a line: a point that stands still, or one that `placeParts` writes at `slot` of the pose. */
export type LineEnd = { readonly fixed: Vector3 } | { readonly slot: number };

/** A straight thick line between two points that move apart from each other: coilover, drop link, half-shaft. */
export interface LineShape {
  readonly kind: 'line';
  readonly name: ClearancePart;
  readonly ends: readonly [LineEnd, LineEnd];
  /** Half the diameter, mm. */
  readonly radius: number;
}

/** Sections of revolution about the hub axis, fixed to the knuckle; the spin of the wheel changes nothing. */
export interface RevolvedShape {
  readonly kind: 'revolved';
  readonly name: ClearancePart;
  readonly body: 'knuckle';
  readonly sections: readonly Section[];
  /** Least and greatest s and ρ of the sections' lines, mm: every point lies on a circle of such a radius. */
  readonly extent: Extent;
}

/** Extent in s along the hub axis and in radius ρ, mm. */
export interface Extent {
  readonly sLow: number;
  readonly sHigh: number;
  readonly radiusLow: number;
  readonly radiusHigh: number;
}

/** A solid box along the vehicle's axes. */
export interface BoxShape {
  readonly kind: 'box';
  readonly name: string;
  readonly body: 'vehicle';
  readonly min: Vector3;
  readonly max: Vector3;
}

/** A mesh; null where its file is not at hand. */
export interface MeshShape {
  readonly kind: 'mesh';
  readonly name: string;
  readonly body: 'vehicle';
  readonly surface: MeshSurface | null;
}

export type Shape = ChainShape | LineShape | RevolvedShape | BoxShape | MeshShape;

/** A moving body's origin and frame in a pose buffer, as in `BODIES`; null for what stands still. */
export function frameSlots(body: ShapeBody): Pick<Body, 'origin' | 'frame'> | null {
  if (body === 'vehicle') return null;
  return body === 'tieRod' ? { origin: Slot.outer, frame: Slot.rodFrame } : BODIES[body];
}

function extentOf(sections: readonly Section[]): Extent {
  let sLow = Number.POSITIVE_INFINITY;
  let sHigh = Number.NEGATIVE_INFINITY;
  let radiusLow = Number.POSITIVE_INFINITY;
  let radiusHigh = 0;
  for (const { line } of sections) {
    for (let at = 0; at < line.length; at += 2) {
      sLow = Math.min(sLow, line[at]!);
      sHigh = Math.max(sHigh, line[at]!);
      radiusLow = Math.min(radiusLow, line[at + 1]!);
      radiusHigh = Math.max(radiusHigh, line[at + 1]!);
    }
  }
  return { sLow, sHigh, radiusLow, radiusHigh };
}

function revolved(name: ClearancePart, sections: readonly Section[]): RevolvedShape {
  return { kind: 'revolved', name, body: 'knuckle', sections, extent: extentOf(sections) };
}

function chain(name: string, body: ShapeBody, strands: readonly Strand[]): ChainShape {
  return { kind: 'chain', name, body, strands };
}

function coiloverShape({ coilover, model }: Corner): LineShape[] {
  if (coilover === null || model.coilover === undefined) return [];
  const radius = coiloverDiameter(model.coilover) / 2;
  const ends = [{ fixed: coilover.top }, { slot: Slot.damperBottom }] as const;
  return [{ kind: 'line', name: 'coilover', ends, radius }];
}

function linkShape({ lever, model }: Corner): LineShape[] {
  if (lever === null || model.antiRollBar === undefined) return [];
  const radius = linkDiameter(model.antiRollBar) / 2;
  const ends = [{ slot: Slot.leverEnd }, { slot: Slot.link }] as const;
  return [{ kind: 'line', name: 'antiRollBarLink', ends, radius }];
}

function shaftShape({ shaft, model }: Corner): LineShape[] {
  if (shaft === null || model.halfShaft === undefined) return [];
  const radius = shaftDiameter(model.halfShaft) / 2;
  const ends = [{ fixed: shaft.inner }, { slot: Slot.shaftOuter }] as const;
  return [{ kind: 'line', name: 'halfShaft', ends, radius }];
}

function obstacleShape(obstacle: Obstacle, meshes: MeshSurfaces | undefined): Shape {
  const { name } = obstacle;
  if (obstacle.shape === 'tube') return chain(name, 'vehicle', [tubeStrand(obstacle)]);
  if (obstacle.shape === 'mesh') {
    return { kind: 'mesh', name, body: 'vehicle', surface: meshes?.get(name) ?? null };
  }
  const low = (i: 0 | 1 | 2): number => Math.min(obstacle.min[i], obstacle.max[i]);
  const high = (i: 0 | 1 | 2): number => Math.max(obstacle.min[i], obstacle.max[i]);
  const min: Vector3 = [low(0), low(1), low(2)];
  return { kind: 'box', name, body: 'vehicle', min, max: [high(0), high(1), high(2)] };
}

/**
 * Shapes of all parts of the corner, in the order of the format's part names, then its obstacles. What the model lacks
 * is left out; a mesh without a surface stays in, so that it can be said of it that it is not at hand.
 */
export function shapesOf(corner: Corner, meshes?: MeshSurfaces): Shape[] {
  const { model } = corner;
  const tubes = knuckleStrands(corner);
  return [
    revolved('wheel', wheelSections(model)),
    revolved('tyre', tyreSections(model)),
    chain('tieRod', 'tieRod', [rodStrand(corner)]),
    chain('upperArm', 'upperArm', [armStrand(corner, 'upperArm')]),
    chain('lowerArm', 'lowerArm', [armStrand(corner, 'lowerArm')]),
    ...coiloverShape(corner),
    ...linkShape(corner),
    ...shaftShape(corner),
    ...(tubes.length === 0 ? [] : [chain('knuckle', 'knuckle', tubes)]),
    ...(model.brake === undefined ? [] : [revolved('brake', brakeSections(model.brake))]),
    ...(model.obstacles ?? []).map((obstacle) => obstacleShape(obstacle, meshes)),
  ];
}
