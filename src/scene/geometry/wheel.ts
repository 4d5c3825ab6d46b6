/**
 * The wheel in its own axes: origin the wheel centre, z along the hub axis outboard, x towards the tie rod's meridian.
 * Barrel and lips are the solver's own section turned about z; the spokes' inboard side is the solver's disc, so what is
 * drawn towards the rod is exactly what the gap is measured to. Outboard, where nothing is near, they are thicker.
 */
import { Matrix4, Vector3 } from 'three';
import { sectionPoints } from '../../../solver/clearance/rodGap.ts';
import type { Model, SectionPoint } from '../../../solver/index.ts';
import { HUB, WHEEL } from '../proportions.ts';
import { OPENING } from './opening.ts';
import { addFace } from './plate.ts';
import { addHex, pinProfile, revolve, type Turn } from './revolve.ts';
import { type Assembly, axisFrame, piece, type Solid } from './solid.ts';
import { addSpoke, discAt, sectionOf, spokePlaces } from './spokes.ts';
import { thicken } from './thicken.ts';

const STEPS = 96;

/** The sector left standing when the wheel is cut open: the opening starts at angle 0. */
export const STANDING: Required<Pick<Turn, 'from' | 'span'>> = {
  from: OPENING,
  span: 2 * Math.PI - OPENING,
};

/** Half-plane through the axis at an angle: local x along ρ, local y along s. */
export function meridianFrame(angle: number): Matrix4 {
  const radial = new Vector3(Math.cos(angle), Math.sin(angle), 0);
  const axial = new Vector3(0, 0, 1);
  return new Matrix4().makeBasis(radial, axial, new Vector3().crossVectors(radial, axial));
}

/** Closes a cut solid of revolution at both ends of its turn; the outline is closed and of [s, ρ]. */
export function addCutFaces(
  solid: Solid,
  outline: readonly SectionPoint[],
  { from, span }: Required<Pick<Turn, 'from' | 'span'>>,
): void {
  const face = outline.slice(0, -1).map(([s, radius]): SectionPoint => [radius, s]);
  // radial × axial points towards falling angles: out of the metal at the beginning of the turn.
  addFace(solid, meridianFrame(from), face, 0, 1);
  addFace(solid, meridianFrame(from + span), face, 0, -1);
}

/** Outline of the barrel's metal, [s, ρ], closed. */
export function barrelOutline(model: Model): SectionPoint[] {
  const section = sectionOf(model, 'barrel');
  return thicken(sectionPoints(section), section.half);
}

function addPad(assembly: Assembly, model: Model): void {
  const face = model.wheel.offset;
  const rim = sectionOf(model, 'disc').line.at(-1)!;
  const pad = Math.min(WHEEL.pad, rim * 0.55);
  const bore = Math.min(WHEEL.bore, pad * 0.5);
  const at = new Matrix4();
  // Beyond the radius at which the solver's disc begins, the pad's inboard face follows it.
  const disc = sectionOf(model, 'disc');
  const line = sectionPoints(disc);
  const start = Math.max(bore + 2, Math.min(pad - 2, line[0]![1]));
  const edge = Math.max(face, discAt(line, pad) - disc.half);
  const top = edge + WHEEL.padThickness;
  const profile: SectionPoint[] = [
    [face, bore],
    [face, start],
    [edge, pad],
    [top - 3, pad],
    [top, pad - 3],
    [top, bore],
    [face, bore],
  ];
  revolve(piece(assembly, 'alloy'), at, profile, { segments: 48 });
  const cap = pinProfile(bore, face + 6, top + 3, 4);
  revolve(piece(assembly, 'dark'), at, cap, { segments: 32 });
  for (let i = 0; i < HUB.bolts; i += 1) {
    const angle = (2 * Math.PI * (i + 0.5)) / HUB.bolts;
    const place = new Vector3(HUB.circle * Math.cos(angle), HUB.circle * Math.sin(angle), face);
    const nut = axisFrame(place, new Vector3(0, 0, 1));
    addHex(piece(assembly, 'steel'), nut, 11, 0, top - face + 12);
  }
}

function addValve(assembly: Assembly, model: Model, angle: number): void {
  const line = sectionPoints(sectionOf(model, 'barrel'));
  const [s, radius] = line[Math.max(0, line.length - 4)]!;
  const root = new Vector3(radius * Math.cos(angle), radius * Math.sin(angle), s + 6);
  const out = new Vector3(-0.75 * Math.cos(angle), -0.75 * Math.sin(angle), 0.66);
  revolve(piece(assembly, 'dark'), axisFrame(root, out), pinProfile(4, 0, 34), { segments: 10 });
}

/** Height of stick-on weights, mm: common practice. What lies behind the line that gaps are measured to is not stated. */
const WEIGHT_HEIGHT = 4;

/** Outline of the weights, swept all round as gaps are measured to them, [s, ρ], closed; null without any. */
export function weightsOutline({ wheel }: Model): SectionPoint[] | null {
  const { weights } = wheel;
  if (weights === undefined) return null;
  const line = weights[0]![0] <= weights.at(-1)![0] ? weights : [...weights].reverse();
  const back = line.map(([s, radius]): SectionPoint => [s, radius + WEIGHT_HEIGHT]);
  return [line[0]!, ...back, ...[...line].reverse()];
}

/** The wheel; cut open, whole spokes only are left out. */
export function buildWheel(model: Model, isCut: boolean): Assembly {
  const assembly: Assembly = {};
  const outline = barrelOutline(model);
  const turn = { segments: STEPS, ...(isCut ? STANDING : {}) };
  revolve(piece(assembly, 'alloy'), new Matrix4(), outline, turn);
  if (isCut) addCutFaces(piece(assembly, 'cutMetal'), outline, STANDING);
  const weights = weightsOutline(model);
  if (weights !== null) revolve(piece(assembly, 'steel'), new Matrix4(), weights, turn);
  if (weights !== null && isCut) addCutFaces(piece(assembly, 'cutMetal'), weights, STANDING);
  const places = spokePlaces(model);
  const pitch = (2 * Math.PI) / WHEEL.spokes;
  const count = isCut ? Math.round(STANDING.span / pitch) : WHEEL.spokes;
  for (let i = 0; i < count; i += 1)
    addSpoke(piece(assembly, 'alloy'), places, STANDING.from + pitch * (i + 0.5));
  addPad(assembly, model);
  addValve(assembly, model, STANDING.from + pitch * 2);
  return assembly;
}
