/** Camber against steer over a caster sweep, with the two readings a gauge takes and the change between them. */
import type { CasterSweep } from '../../../solver/index.ts';
import { ticksOf } from '../../charts/ticks.ts';
import { angle, fixed } from '../../words/format.ts';
import { ChartGrid } from './ChartGrid.tsx';
import type { CurvePoint } from './casterCurve.ts';

const WIDTH = 400;
const HEIGHT = 200;
const PLOT = { left: 44, top: 12, right: 388, bottom: 158 } as const;
const ROOM = 0.14;

interface Axes {
  readonly x: (steer: number) => number;
  readonly y: (camber: number) => number;
  readonly steer: readonly [number, number];
  readonly camber: readonly [number, number];
}

function along(from: number, to: number, [least, most]: readonly [number, number]) {
  return (value: number): number => from + ((to - from) * (value - least)) / (most - least);
}

/** Steered left lies at the left, as on the transport. */
function axesOf(points: readonly CurvePoint[]): Axes {
  const steers = points.map((point) => point.steer);
  const cambers = points.map((point) => point.camber);
  const wide = Math.max(...steers.map(Math.abs)) * (1 + ROOM / 2);
  const [least, most] = [Math.min(...cambers), Math.max(...cambers)];
  const room = Math.max(0.05, (most - least) * ROOM);
  const steer = [-wide, wide] as const;
  const camber = [least - room, most + room] as const;
  return {
    steer,
    camber,
    x: along(PLOT.right, PLOT.left, steer),
    y: along(PLOT.bottom, PLOT.top, camber),
  };
}

function Grid({ x, y, steer, camber }: Axes) {
  return (
    <ChartGrid
      plot={[PLOT.left, PLOT.top, PLOT.right, PLOT.bottom]}
      across={{
        name: '← steered left · steer, ° · steered right →',
        ticks: ticksOf(steer[0], steer[1], 8).map(({ at, text }) => ({ place: x(at), text })),
      }}
      up={{
        name: 'camber, °',
        ticks: ticksOf(camber[0], camber[1], 5).map(({ at, text }) => ({ place: y(at), text })),
      }}
    />
  );
}

export function CasterChart({
  sweep,
  points,
}: {
  readonly sweep: CasterSweep;
  readonly points: readonly CurvePoint[];
}) {
  const axes = axesOf(points);
  const { x, y } = axes;
  const { left, right, straight } = sweep;
  const line = points.map(({ steer, camber }) => `${x(steer).toFixed(1)} ${y(camber).toFixed(1)}`);
  return (
    <svg
      className="caster-chart"
      role="img"
      aria-label={`Camber over steer: ${angle(left.camber)} steered ${fixed(left.steer, 1)}° left, ${angle(straight.camber)} straight ahead, ${angle(right.camber)} steered right`}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
    >
      <Grid {...axes} />
      <path className="caster-curve" d={`M${line.join('L')}`} />
      <path
        className="caster-change"
        d={`M${x(left.steer)} ${y(left.camber)}V${y(right.camber)}H${x(right.steer)}`}
      />
      <text
        className="caster-said"
        x={x(left.steer) + 6}
        y={(y(left.camber) + y(right.camber)) / 2 + 4}
      >
        {angle(Math.abs(sweep.change))}
      </text>
      {[left, right].map((at) => (
        <circle key={at.steer} className="caster-read" r="5" cx={x(at.steer)} cy={y(at.camber)} />
      ))}
      <circle className="region-hollow" r="4" cx={x(0)} cy={y(straight.camber)} />
    </svg>
  );
}
