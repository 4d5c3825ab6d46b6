/** Sections of revolution about the hub axis, in the (axial s, radial ρ) plane of the wheel, as flat buffers. */
import { wheelThickness } from '../model/defaults.ts';
import type { Brake, Model, SectionPoint } from '../model/model.ts';
import { wheelDisc, wheelSection } from '../model/rim.ts';
import { tyreSection } from '../model/tyre.ts';

/** One polyline [s, ρ, s, ρ, …], mm, thickened by `half`; a solid one is closed and its inside counts as metal. */
export interface Section {
  readonly name: 'barrel' | 'disc' | 'weights' | 'tyre' | 'brake';
  readonly line: Float64Array;
  readonly half: number;
  readonly solid: boolean;
}

function flatten(points: readonly SectionPoint[], closed: boolean): Float64Array {
  const all = closed && points[0] !== undefined ? [...points, points[0]] : points;
  return Float64Array.from(all.flat());
}

/** The wheel's metal: barrel with both lips, and the disc; and the surface of its stick-on weights. */
export function wheelSections(model: Model): readonly Section[] {
  const { weights } = model.wheel;
  const half = wheelThickness(model.wheel) / 2;
  return [
    { name: 'barrel', line: flatten(wheelSection(model.wheel), false), half, solid: false },
    { name: 'disc', line: flatten(wheelDisc(model.wheel), false), half, solid: false },
    ...(weights === undefined
      ? []
      : [{ name: 'weights', line: flatten(weights, false), half: 0, solid: false } as const]),
  ];
}

/** The tyre as a solid, no bulge and no deflection. */
export function tyreSections(model: Model): readonly Section[] {
  return [
    {
      name: 'tyre',
      line: flatten(tyreSection(model.tyre, model.wheel), true),
      half: 0,
      solid: true,
    },
  ];
}

/** The envelope of disc and caliper, a solid. */
export function brakeSections({ section }: Brake): readonly Section[] {
  return [{ name: 'brake', line: flatten(section, true), half: 0, solid: true }];
}
