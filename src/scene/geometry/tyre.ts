/** The tyre in the wheel's axes: inside the solver's polygon everywhere, its corners rounded inwards, grooves cut into the tread. */
import { Matrix4 } from 'three';
import { sectionPoints } from '../../../solver/clearance/rodGap.ts';
import {
  type Model,
  type SectionPoint,
  tyreSections,
  wheelSections,
} from '../../../solver/index.ts';
import { TYRE } from '../proportions.ts';
import { profileRows, type Row, type Turn } from './revolve.ts';
import { type Assembly, addQuad, addVertex, piece, type Solid } from './solid.ts';
import { roundedLine } from './thicken.ts';
import { addCutFaces, STANDING } from './wheel.ts';

const GROOVES = 4;
/** Shoulder grooves: share of a pitch that is block, and of a ramp. */
const BLOCK = 0.76;
const RAMP = 0.04;

/** The polygon from inner bead to outer bead, rounded, [s, ρ]. */
export function tyreLine(model: Model): SectionPoint[] {
  const polygon = sectionPoints(tyreSections(model)[0]!).slice(0, -1);
  return roundedLine(polygon, 34, 4);
}

/** The tread's flat middle with its circumferential grooves, between two points of equal radius. */
function groovedTread([low, radius]: SectionPoint, [high]: SectionPoint): SectionPoint[] {
  const pitch = (high - low) / GROOVES;
  const half = Math.min(TYRE.grooveWidth, pitch * 0.4) / 2;
  return Array.from({ length: GROOVES }, (_, i) => {
    const middle = low + pitch * (i + 0.5);
    return [
      [middle - half, radius],
      [middle - half + 1.5, radius - TYRE.groove],
      [middle + half - 1.5, radius - TYRE.groove],
      [middle + half, radius],
    ] satisfies SectionPoint[];
  }).flat();
}

interface Outside {
  readonly line: SectionPoint[];
  /** Points that dip between the shoulder's blocks. */
  readonly shoulder: boolean[];
}

/** Sinks a band of each sidewall a little, between two shares of its height: the relief that catches the light. */
function relieved(line: readonly SectionPoint[]): SectionPoint[] {
  const foot = line[0]![1];
  const widest = Math.max(...line.map(([s]) => s));
  const waist = line.find(([s]) => s <= 1e-6 - widest)?.[1] ?? foot;
  return line.flatMap((point, i): SectionPoint[] => {
    const next = line[i + 1];
    if (next === undefined) return [point];
    const rising = next[1] > point[1];
    const [low, high] = rising ? [point, next] : [next, point];
    const isWall = low[1] === foot && high[1] <= waist + 1;
    if (!isWall) return [point];
    const side = Math.sign(point[0]);
    const at = (share: number, depth: number): SectionPoint => [
      low[0] + (high[0] - low[0]) * share - side * depth,
      low[1] + (high[1] - low[1]) * share,
    ];
    const band = RELIEF.map(([share, depth]) => at(share, depth));
    return [point, ...(rising ? band : band.reverse())];
  });
}

/** [share of the lower sidewall, depth mm]. */
const RELIEF: readonly SectionPoint[] = [
  [0.16, 0],
  [0.19, 2],
  [0.3, 2],
  [0.33, 0.2],
  [0.72, 0.2],
  [0.75, 2.2],
  [0.93, 2.2],
  [0.96, 0],
];

/** Ends of the rim's metal: the rubber is drawn on to them, so that no chink opens between sidewall and flange. */
function beads(model: Model): [SectionPoint, SectionPoint] {
  const { line } = wheelSections(model).find(({ name }) => name === 'barrel')!;
  return [
    [line[0]!, line[1]!],
    [line.at(-2)!, line.at(-1)!],
  ];
}

/** The outside with tread grooves; `shoulder` marks what the blocks shape. */
function outside(model: Model): Outside {
  const line = relieved(tyreLine(model));
  const top = Math.max(...line.map(([, radius]) => radius));
  const flat = line.findIndex(
    ([, radius], i) => radius > top - 1e-6 && line[i + 1]![1] > top - 1e-6,
  );
  const grooves = groovedTread(line[flat]!, line[flat + 1]!);
  const [inner, outer] = beads(model);
  const full = [inner, ...line.slice(0, flat + 1), ...grooves, ...line.slice(flat + 1), outer];
  const depth = 34;
  const edge = Math.abs(grooves[0]![0]);
  return {
    line: full,
    shoulder: full.map(([s, radius]) => radius > top - depth && Math.abs(s) > edge + 2),
  };
}

/** Inside of the carcass: the rounded line drawn in by the rubber's thickness. */
function inside(line: readonly SectionPoint[]): SectionPoint[] {
  const top = Math.max(...line.map(([, radius]) => radius));
  const foot = line[0]![1];
  return line.map(([s, radius], i) => {
    const before = line[Math.max(0, i - 1)]!;
    const after = line[Math.min(line.length - 1, i + 1)]!;
    const size = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
    const height = (radius - foot) / (top - foot);
    const wall = TYRE.sidewall + (TYRE.tread - TYRE.sidewall) * height ** 6;
    return [
      s + (wall * (after[1] - before[1])) / size,
      Math.max(foot, radius - (wall * (after[0] - before[0])) / size),
    ];
  });
}

/** Heel and toe of the bead on the inner seat, [s, ρ]; none where the rim's section has no seat beside its lip. */
function beadSeat(model: Model): [SectionPoint, SectionPoint] | null {
  const { line, half } = wheelSections(model).find(({ name }) => name === 'barrel')!;
  const [lip, , s, radius] = [line[0]!, line[1]!, line[2]!, line[3]!];
  if (line.length < 12 || Math.abs(s) < 0.7 * Math.abs(lip)) return null;
  return [
    [s, radius + half],
    [s + TYRE.toe, radius + half],
  ];
}

/** The whole inside from bead to bead: heel and toe on the rim's seats, then the carcass. */
function lining(model: Model): SectionPoint[] {
  const carcass = inside(tyreLine(model));
  const seat = beadSeat(model);
  if (seat === null) return carcass;
  const [heel, toe] = seat;
  const mirrored = ([s, radius]: SectionPoint): SectionPoint => [-s, radius];
  return [heel, toe, ...carcass, mirrored(toe), mirrored(heel)];
}

/** The way back along the inside, from the outer lip to the inner one: with the outside it closes the rubber. */
function wayBack(skin: readonly SectionPoint[], model: Model): SectionPoint[] {
  return [skin.at(-1)!, ...lining(model).reverse(), skin[0]!];
}

/** Closed outline of the rubber, [s, ρ]: what the cut shows. */
export function tyreOutline(model: Model): SectionPoint[] {
  const { line } = outside(model);
  return [...line, ...wayBack(line, model).slice(1)];
}

type Part = Required<Pick<Turn, 'from' | 'span'>>;

/** Angles of the shoulder's blocks within one turn, and whether the ring at each lies in a groove. */
function stations(turn: Part): { angle: number; dips: boolean }[] {
  const count = Math.max(1, Math.round((TYRE.pitches * turn.span) / (2 * Math.PI)));
  const pitch = turn.span / count;
  const rings = Array.from({ length: count }, (_, i) =>
    [
      { share: 0, dips: false },
      { share: BLOCK, dips: false },
      { share: BLOCK + RAMP, dips: true },
      { share: 1 - RAMP, dips: true },
    ].map(({ share, dips }) => ({ angle: turn.from + pitch * (i + share), dips })),
  ).flat();
  return [...rings, { angle: turn.from + turn.span, dips: false }];
}

/** Turns the outside with its blocks; every row shares the same angles, so that no seam opens. */
function addSkin(solid: Solid, { line, shoulder }: Outside, turn: Part): void {
  const identity = new Matrix4();
  const rings = stations(turn);
  profileRows(line, 0.5).forEach(([low, high], i) => {
    let before = -1;
    for (const { angle, dips } of rings) {
      const cos = Math.cos(angle);
      const sin = Math.sin(angle);
      const add = ({ s, radius, ns, nr }: Row, isShoulder: boolean): number => {
        const r = radius - (dips && isShoulder ? TYRE.groove * 0.8 : 0);
        return addVertex(solid, identity, r * cos, r * sin, s, nr * cos, nr * sin, ns);
      };
      const start = add(low, shoulder[i]!);
      add(high, shoulder[i + 1]!);
      if (before >= 0) addQuad(solid, before, start, start + 1, before + 1);
      before = start;
    }
  });
}

/** The tyre's outside; cut open, with its inside and both cut faces. */
export function buildTyre(model: Model, isCut: boolean): Assembly {
  const assembly: Assembly = {};
  const rubber = piece(assembly, 'tyre');
  const skin = outside(model);
  addSkin(rubber, skin, isCut ? STANDING : { from: 0, span: 2 * Math.PI });
  if (isCut) {
    const line = wayBack(skin.line, model);
    addSkin(rubber, { line, shoulder: line.map(() => false) }, STANDING);
    addCutFaces(piece(assembly, 'cutRubber'), tyreOutline(model), STANDING);
  }
  return assembly;
}
