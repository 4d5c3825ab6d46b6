/** What the hardware can reach of camber and caster, to scale; a hand in it asks for that pair. */
import { useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import {
  type AnglePoint,
  hardwareWords,
  type Model,
  type ReachableRegion,
} from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { angle } from '../../words/format.ts';
import { Grid, Points, Reach, Window } from './RegionDrawing.tsx';
import { CHART_WIDTH, frameOf, placeX, placeY, type RegionFrame } from './regionFrame.ts';
import { setAngle } from './setPose.ts';
import { useAsking, wantedPoint } from './useAsking.ts';

/** The frame; it stands still while a hand drags in it. */
function useFrame(region: ReachableRegion, model: Model): RegionFrame {
  const isHeld = useStore(documentStore, (state) => state.mark !== null);
  const last = useRef<{ readonly frame: RegionFrame; readonly region: ReachableRegion } | null>(
    null,
  );
  return useMemo(() => {
    if (isHeld && last.current?.region === region) return last.current.frame;
    const { camber, caster } = wantedPoint(model);
    const across = model.targets?.camber?.plusMinus ?? 0;
    const up = model.targets?.caster?.plusMinus ?? 0;
    const shown: AnglePoint[] = [
      ...region.outline,
      ...region.paths.flatMap(({ points }) => points),
      { camber: setAngle('camber'), caster: setAngle('caster') },
      { camber: camber - across, caster: caster - up },
      { camber: camber + across, caster: caster + up },
    ];
    const frame = frameOf(
      shown.filter((point) => Number.isFinite(point.camber) && Number.isFinite(point.caster)),
    );
    last.current = { frame, region };
    return frame;
  }, [isHeld, region, model]);
}

function Legend({ region }: { readonly region: ReachableRegion }) {
  return (
    <ul className="region-legend">
      {region.isArea && (
        <li>
          <svg viewBox="0 0 28 12" width="28" height="12" aria-hidden="true" focusable="false">
            <rect className="region-fill" width="28" height="12" />
          </svg>
          can be reached
        </li>
      )}
      <li>
        <svg viewBox="0 0 28 12" width="28" height="12" aria-hidden="true" focusable="false">
          <rect className="region-window" x="1" y="1" width="26" height="10" />
        </svg>
        wanted, with its ±
      </li>
      {region.paths.map(({ name }) => (
        <li key={name} className="region-path" data-cam={name}>
          <svg viewBox="0 0 28 12" width="28" height="12" aria-hidden="true" focusable="false">
            <path d="M1 6H27" />
          </svg>
          {hardwareWords(name)} alone
        </li>
      ))}
    </ul>
  );
}

/** Where a finger takes hold of what is wanted; anywhere else it drags the page. */
function Hold({ frame, model }: { readonly frame: RegionFrame; readonly model: Model }) {
  const { camber, caster } = wantedPoint(model);
  if (!Number.isFinite(camber) || !Number.isFinite(caster)) return null;
  const left = `${(100 * placeX(frame, camber)) / CHART_WIDTH}%`;
  const top = `${(100 * placeY(frame, caster)) / frame.height}%`;
  return <span className="region-hold" style={{ left, top }} />;
}

/** What the chart is, for those who do not see it, and how to ask in it. */
function chartWords({ camber, caster }: AnglePoint): string {
  const isKnown = Number.isFinite(camber) && Number.isFinite(caster);
  const wanted = isKnown ? ` Wanted: camber ${angle(camber)}, caster ${angle(caster)}.` : '';
  return `Camber and caster that can be reached.${wanted} Arrow keys ask for another pair.`;
}

export function RegionChart({ region }: { readonly region: ReachableRegion }) {
  const model = useStore(documentStore, (state) => state.model);
  const frame = useFrame(region, model);
  const acts = useAsking(frame);
  return (
    <>
      <div
        className="region"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its arrow keys move what is wanted.
        tabIndex={0}
        aria-label={chartWords(wantedPoint(model))}
        {...acts}
      >
        <svg viewBox={`0 0 ${CHART_WIDTH} ${frame.height}`} aria-hidden="true" focusable="false">
          <Grid frame={frame} />
          <Reach frame={frame} region={region} />
          <Window frame={frame} model={model} />
          <Points frame={frame} model={model} />
        </svg>
        <Hold frame={frame} model={model} />
      </div>
      <Legend region={region} />
    </>
  );
}
