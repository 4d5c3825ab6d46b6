/**
 * Outline of all camber and caster that several cams and shims reach. The hardware's ranges are a box; what bounds its image is
 * the image of an edge of the box, or of a fold within one of its faces, where two pieces of hardware move camber and caster along
 * one line and cannot carry the corner further. All of these are traced, and the outermost is taken all round.
 */
import type { Steps } from '../stops/steps.ts';
import { degrees } from '../units.ts';
import { movable, type Stood, walkTo } from './nearest.ts';
import { slopesAt } from './placed.ts';
import { sharesAlong } from './shares.ts';
import type { Stance } from './stance.ts';

/** Degrees. */
export interface AnglePoint {
  readonly camber: number;
  readonly caster: number;
}

/** Degrees aside of a ray at which a point is on it. */
const ON_RAY = 1e-12;

type Trace = readonly AnglePoint[];

/** Stretches of an edge; rows and columns a face is searched for folds in; halvings to a fold. */
const STRETCHES = 24;
const ROWS = 6;
const HALVINGS = 24;
/** Rays on which the outermost is sought, besides those through every point traced. */
const RAYS = 60;
/** Points that lie so near to the line through their neighbours, degrees, are left out. */
const STRAIGHT = 2e-5;

/** Places of the box that one or two links go through, the others each at an end. */
interface Face {
  readonly free: readonly number[];
  readonly at: readonly number[];
}

/** Every choice of ends for the links that are not free, as shares in the order of `Stance.arms`. */
function facesOf({ arms }: Stance, links: readonly number[], free: readonly number[]): Face[] {
  const held = links.filter((link) => !free.includes(link));
  return Array.from({ length: 2 ** held.length }, (_, way) => ({
    free,
    at: arms.map(({ range }, i) => {
      const place = held.indexOf(i);
      return place < 0 ? 0 : range[(way >> place) % 2 === 0 ? 0 : 1];
    }),
  }));
}

function pointOf({ place }: Stood): AnglePoint {
  return { camber: degrees(place.camber), caster: degrees(place.caster) };
}

/** The traced places of the box by their shares, each from the last. */
class Tracer {
  readonly stance: Stance;
  readonly toe: number | null;
  private at: Stood;

  constructor(stance: Stance, toe: number | null, start: Stood) {
    this.stance = stance;
    this.toe = toe;
    this.at = start;
  }

  stand(shares: readonly number[]): Stood | null {
    const place = walkTo(this.stance, this.toe, this.at, shares);
    if (place === null) return null;
    this.at = { shares, place };
    return this.at;
  }

  /** How much area of camber × caster two links sweep, with its sign; null where it cannot be told. */
  area(shares: readonly number[], [a, b]: readonly [number, number]): number | null {
    const stood = this.stand(shares);
    const slopes = stood && slopesAt(this.stance, shares, this.toe, stood.place, [a, b]);
    if (!slopes) return null;
    const [camber, caster] = slopes as [number[], number[]];
    return camber[0]! * caster[1]! - camber[1]! * caster[0]!;
  }
}

function edgeTrace(tracer: Tracer, { free, at }: Face): Trace {
  const [link] = free as [number];
  return sharesAlong(tracer.stance.arms[link]!, STRETCHES).flatMap((share) => {
    const stood = tracer.stand(at.map((each, i) => (i === link ? share : each)));
    return stood === null ? [] : [pointOf(stood)];
  });
}

/** The fold of a face: in each row the place where the swept area changes its sign. */
function foldTrace(tracer: Tracer, { free, at }: Face): Trace {
  const [a, b] = free as [number, number];
  const { arms } = tracer.stance;
  const set = (first: number, second: number) =>
    at.map((each, i) => (i === a ? first : i === b ? second : each));
  return sharesAlong(arms[a]!, ROWS).flatMap((first) => {
    const columns = sharesAlong(arms[b]!, ROWS);
    const areas = columns.map((second) => tracer.area(set(first, second), [a, b]));
    const turn = areas.findIndex((area, i) => (area ?? 0) * (areas[i + 1] ?? 0) < 0);
    if (turn < 0) return [];
    let [low, high] = [columns[turn]!, columns[turn + 1]!];
    for (let count = 0; count < HALVINGS; count += 1) {
      const middle = (low + high) / 2;
      const area = tracer.area(set(first, middle), [a, b]) ?? 0;
      if (area * areas[turn]! > 0) low = middle;
      else high = middle;
    }
    const stood = tracer.stand(set(first, low));
    return stood === null ? [] : [pointOf(stood)];
  });
}

/** Distance along a ray at which it crosses a stretch; 0 where it does not. */
function crossing(origin: AnglePoint, angle: number, from: AnglePoint, to: AnglePoint): number {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const along = (p: AnglePoint) =>
    cos * (p.camber - origin.camber) + sin * (p.caster - origin.caster);
  const aside = (p: AnglePoint) =>
    cos * (p.caster - origin.caster) - sin * (p.camber - origin.camber);
  const [a, b] = [aside(from), aside(to)];
  // A corner lies on its ray but for rounding.
  if (Math.abs(a) < ON_RAY) return along(from);
  if (Math.abs(b) < ON_RAY) return along(to);
  if (a * b > 0) return 0;
  const part = a / (a - b);
  return along(from) + part * (along(to) - along(from));
}

function outermost(origin: AnglePoint, traces: readonly Trace[], angle: number): AnglePoint {
  const far = traces.reduce(
    (best, trace) =>
      trace.reduce((most, point, i) => {
        const next = trace[i + 1];
        return next === undefined ? most : Math.max(most, crossing(origin, angle, point, next));
      }, best),
    0,
  );
  return {
    camber: origin.camber + far * Math.cos(angle),
    caster: origin.caster + far * Math.sin(angle),
  };
}

function distanceTo(from: AnglePoint, to: AnglePoint, { camber, caster }: AnglePoint): number {
  const [dx, dy] = [to.camber - from.camber, to.caster - from.caster];
  const [px, py] = [camber - from.camber, caster - from.caster];
  const squared = dx * dx + dy * dy;
  const part = squared > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / squared)) : 0;
  return Math.hypot(px - part * dx, py - part * dy);
}

/** The points of a line without those that change nothing to be seen: parted at the one farthest off, as long as it is off. */
function thinned(points: readonly AnglePoint[]): AnglePoint[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  const offs = points.map((point) => distanceTo(first, last, point));
  const most = Math.max(...offs);
  if (points.length < 3 || most < STRAIGHT) return points.length < 2 ? [...points] : [first, last];
  const at = offs.indexOf(most);
  return [...thinned(points.slice(0, at + 1)).slice(0, -1), ...thinned(points.slice(at))];
}

function pairsOf(links: readonly number[]): (readonly [number, number])[] {
  return links.flatMap((a, i) => links.slice(i + 1).map((b) => [a, b] as const));
}

/** The outline, once round, of what two or more links reach; `centred` is the place without any shift. */
export function* outlineInSteps(
  stance: Stance,
  toe: number | null,
  centred: Stood,
): Steps<AnglePoint[]> {
  const links = movable(stance);
  const tracer = new Tracer(stance, toe, centred);
  const edges = links.flatMap((link) => facesOf(stance, links, [link]));
  const faces = pairsOf(links).flatMap((pair) => facesOf(stance, links, pair));
  const traces: Trace[] = [];
  for (const face of [...edges, ...faces]) {
    const trace = face.free.length === 1 ? edgeTrace(tracer, face) : foldTrace(tracer, face);
    if (trace.length > 0) traces.push(trace);
    yield traces.length / (edges.length + faces.length + 1);
  }
  const middle = tracer.stand(
    stance.arms.map(({ range: [least, most], fitting }) =>
      fitting === null ? 0 : (least + most) / 2,
    ),
  );
  const origin = pointOf(middle ?? centred);
  const angles = [
    ...Array.from({ length: RAYS }, (_, i) => (2 * Math.PI * i) / RAYS - Math.PI),
    ...traces
      .flat()
      .map(({ camber, caster }) => Math.atan2(caster - origin.caster, camber - origin.camber)),
  ].sort((a, b) => a - b);
  const all = angles
    .filter((angle, i) => i === 0 || angle - angles[i - 1]! > 1e-6)
    .map((angle) => outermost(origin, traces, angle));
  return thinned(all);
}
