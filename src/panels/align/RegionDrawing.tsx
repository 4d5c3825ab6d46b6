/** The parts of the chart of camber and caster: axes, what is reached, the window that is wanted, the points. */
import { useStore } from 'zustand';
import type { AnglePoint, Model, ReachableRegion } from '../../../solver/index.ts';
import { ticksOf } from '../../charts/ticks.ts';
import { alignment } from '../../state/aligned.ts';
import { ChartGrid } from './ChartGrid.tsx';
import { lineOf, placeX, placeY, type RegionFrame } from './regionFrame.ts';
import { setAngle } from './setPose.ts';
import { wantedPoint } from './useAsking.ts';

export function Grid({ frame }: { readonly frame: RegionFrame }) {
  const { plot, camber, caster } = frame;
  const across = ticksOf(camber[0], camber[1], 6);
  const up = ticksOf(caster[0], caster[1], 6);
  return (
    <ChartGrid
      plot={plot}
      across={{
        name: '← top leans in · camber, ° · top leans out →',
        ticks: across.map(({ at, text }) => ({ place: placeX(frame, at), text })),
      }}
      up={{
        name: 'caster, ° · leans back →',
        ticks: up.map(({ at, text }) => ({ place: placeY(frame, at), text })),
      }}
    />
  );
}

/** Where a line ends: hollow at −90° or with no shims, full at the other end. */
function End({
  frame,
  at,
  isFull,
}: {
  readonly frame: RegionFrame;
  readonly at: AnglePoint | undefined;
  readonly isFull: boolean;
}) {
  if (at === undefined) return null;
  return (
    <circle
      className={isFull ? 'region-full' : 'region-hollow'}
      r="3.5"
      cx={placeX(frame, at.camber)}
      cy={placeY(frame, at.caster)}
    />
  );
}

export function Reach({
  frame,
  region,
}: {
  readonly frame: RegionFrame;
  readonly region: ReachableRegion;
}) {
  return (
    <g>
      {region.isArea && <path className="region-fill" d={lineOf(frame, region.outline, true)} />}
      {region.paths.map(({ name, points }) => (
        <g key={name} className="region-path" data-cam={name}>
          <path d={lineOf(frame, points, false)} />
          <End frame={frame} at={points[0]} isFull={false} />
          <End frame={frame} at={points.at(-1)} isFull />
        </g>
      ))}
    </g>
  );
}

/** The window of what may be: a rectangle, or a band where only one of the two is wanted. */
export function Window({ frame, model }: { readonly frame: RegionFrame; readonly model: Model }) {
  const { camber, caster } = model.targets ?? {};
  if (camber === undefined && caster === undefined) return null;
  const [left, top, right, bottom] = frame.plot;
  const across = (value: number) => Math.min(right, Math.max(left, placeX(frame, value)));
  const up = (value: number) => Math.min(bottom, Math.max(top, placeY(frame, value)));
  const x = camber === undefined ? [left, right] : ends(camber, across);
  const y = caster === undefined ? [top, bottom] : ends(caster, up).reverse();
  return (
    <rect
      className="region-window"
      x={x[0]}
      y={y[0]}
      width={Math.max(0, x[1]! - x[0]!)}
      height={Math.max(0, y[1]! - y[0]!)}
    />
  );
}

function ends(
  { value, plusMinus }: { readonly value: number; readonly plusMinus: number },
  place: (value: number) => number,
): number[] {
  return [place(value - plusMinus), place(value + plusMinus)];
}

export function Points({ frame, model }: { readonly frame: RegionFrame; readonly model: Model }) {
  const found = useStore(alignment, (state) => state.settings);
  const wanted = wantedPoint(model);
  const [x, y] = [placeX(frame, wanted.camber), placeY(frame, wanted.caster)];
  const [nowX, nowY] = [placeX(frame, setAngle('camber')), placeY(frame, setAngle('caster'))];
  const nearest = found === null || found.reached ? null : found.after.angles;
  const isThere = Number.isFinite(nowX) && Number.isFinite(nowY);
  return (
    <g>
      {nearest !== null && (
        <g className="region-nearest">
          <path
            d={`M${x} ${y}L${placeX(frame, nearest.camber)} ${placeY(frame, nearest.caster)}`}
          />
          <path
            className="region-diamond"
            transform={`translate(${placeX(frame, nearest.camber)} ${placeY(frame, nearest.caster)})`}
            d="M0-6L6 0L0 6L-6 0Z"
          />
        </g>
      )}
      {isThere && (
        <g className="region-now" transform={`translate(${nowX} ${nowY})`}>
          <circle r="5.5" />
          <text x="9" y="14">
            now
          </text>
        </g>
      )}
      {Number.isFinite(x) && Number.isFinite(y) && (
        <g className="region-wanted" transform={`translate(${x} ${y})`}>
          <circle r="9" />
          <path d="M-14 0H-4M4 0H14M0-14V-4M0 4V14" />
        </g>
      )}
    </g>
  );
}
