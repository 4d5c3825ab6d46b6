/** The picture: wheel, tyre, rod and joints turned into one half-plane through the hub axis, to scale. */
import { type ReactNode, type RefObject, useLayoutEffect, useRef, useState } from 'react';
import type { GapMark, SectionView } from '../../../solver/fitment/sectionView.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length } from '../../words/format.ts';
import type { GapState } from '../gap.ts';
import type { Column, ColumnKey } from './columns.ts';
import { type Outlines, outlinesOf, pathOf, type Window } from './drawn.ts';

/** Pixels per millimetre of the picture as it stands, so that words and handles keep their size. */
function useScale(svg: RefObject<SVGSVGElement | null>, window: Window): number {
  const [size, setSize] = useState<readonly [number, number]>([600, 700]);
  useLayoutEffect(() => {
    const element = svg.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(() =>
      setSize([element.clientWidth || 600, element.clientHeight || 700]),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, [svg]);
  return Math.min(size[0] / (window.right - window.left), size[1] / (window.top - window.bottom));
}

function OtherWheel({ name, outlines }: { name: ColumnKey; outlines: Outlines }) {
  return (
    <g className="section-other" data-column={name}>
      <path d={pathOf(outlines.tyre, true)} />
      <path d={pathOf(outlines.barrel)} />
      <path d={pathOf(outlines.disc)} />
    </g>
  );
}

function ChosenWheel({ name, outlines }: { name: ColumnKey; outlines: Outlines }) {
  const { tyre, barrel, disc, weights, brake, thickness, spacer } = outlines;
  return (
    <g className="section-chosen" data-column={name}>
      <path className="section-tyre" d={pathOf(tyre, true)} />
      {brake.length > 0 && <path className="section-brake" d={pathOf(brake)} />}
      {spacer > 0 && <rect className="section-spacer" x={0} y={-75} width={spacer} height={75} />}
      <path className="section-metal" d={pathOf(disc)} strokeWidth={thickness} />
      <path className="section-metal" d={pathOf(barrel)} strokeWidth={thickness} />
      {weights.length > 0 && <path className="section-weights" d={pathOf(weights)} />}
    </g>
  );
}

function Rod({ view }: { view: SectionView }) {
  return (
    <g className="section-rod">
      {view.rod.map(({ line, diameter }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a stretch is its place along the rod.
        <path key={i} d={pathOf(line)} strokeWidth={diameter} />
      ))}
    </g>
  );
}

const JOINTS = [
  ['tieRodOuter', 'rod end'],
  ['lowerBallJoint', 'lower ball'],
  ['upperBallJoint', 'upper ball'],
] as const;

function Joints({ view, scale }: { view: SectionView; scale: number }) {
  return (
    <g className="section-joints">
      {JOINTS.map(([name, words]) => {
        const [x, y] = view.joints[name];
        return (
          <g key={name}>
            <circle cx={x} cy={-y} r={4 / scale} />
            <text x={x - 8 / scale} y={-y + 4 / scale} textAnchor="end" fontSize={13 / scale}>
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function Gap({
  mark,
  state,
  unit,
  scale,
}: {
  mark: GapMark;
  state: GapState;
  unit: LengthUnit;
  scale: number;
}) {
  const [from, to] = [mark.from, mark.to];
  return (
    <g className="section-gap" data-state={state}>
      <line x1={from[0]} y1={-from[1]} x2={to[0]} y2={-to[1]} />
      <circle cx={from[0]} cy={-from[1]} r={3 / scale} />
      <circle cx={to[0]} cy={-to[1]} r={3 / scale} />
      <text
        x={(from[0] + to[0]) / 2 - 9 / scale}
        y={-(from[1] + to[1]) / 2}
        textAnchor="end"
        fontSize={17 / scale}
      >
        {length(mark.gap, gapUnit(unit))}
      </text>
    </g>
  );
}

/** Hub axis, hub face, and the chosen wheel's centre plane. */
function Datum({ window, plane, scale }: { window: Window; plane: number; scale: number }) {
  const { left, right, top, bottom } = window;
  const size = 13 / scale;
  return (
    <g className="section-datum" fontSize={size}>
      <line className="section-axis" x1={left} y1={0} x2={right} y2={0} />
      <line className="section-face" x1={0} y1={0} x2={0} y2={-82} />
      <line className="section-plane" x1={plane} y1={0} x2={plane} y2={-top} />
      <text
        x={plane + (plane < 0 ? -5 : 5) / scale}
        y={-Math.max(bottom, 0) - 10 / scale}
        textAnchor={plane < 0 ? 'end' : 'start'}
      >
        centre plane
      </text>
      {bottom < 0 && (
        <>
          <text x={left + 6 / scale} y={size * 1.4}>
            ← inboard
          </text>
          <text x={right - 6 / scale} y={size * 1.4} textAnchor="end">
            outboard →
          </text>
          <text x={0} y={size * 1.4} textAnchor="middle">
            hub face
          </text>
        </>
      )}
    </g>
  );
}

/** A length to measure by, of about a fifth of the picture. */
function ScaleBar({ window, unit, scale }: { window: Window; unit: LengthUnit; scale: number }) {
  const steps = unit === 'mm' ? [10, 20, 50, 100] : [12.7, 25.4, 50.8, 101.6];
  const wanted = (window.right - window.left) / 5;
  const bar = steps.reduce((best, step) =>
    Math.abs(step - wanted) < Math.abs(best - wanted) ? step : best,
  );
  const y = -window.top + 16 / scale;
  const x = window.left + 8 / scale;
  return (
    <g className="section-bar" fontSize={13 / scale}>
      <path d={`M${x} ${y - 5 / scale}V${y}H${x + bar}V${y - 5 / scale}`} />
      <text x={x + bar / 2} y={y + 14 / scale} textAnchor="middle">
        {length(bar, unit, 0)}
      </text>
    </g>
  );
}

export interface SectionPictureProps {
  readonly columns: readonly Column[];
  readonly chosen: ColumnKey;
  readonly view: SectionView | null;
  readonly state: GapState;
  readonly window: Window;
  readonly unit: LengthUnit;
  readonly label: string;
  /** Handles over the picture, given the scale in px per mm. */
  readonly handles?: (scale: number) => ReactNode;
}

export function SectionPicture(props: SectionPictureProps) {
  const { columns, chosen, view, state, window, unit, label, handles } = props;
  const svg = useRef<SVGSVGElement>(null);
  const scale = useScale(svg, window);
  const { left, right, top, bottom } = window;
  const fitted = columns.flatMap(({ key, model }) =>
    model === null ? [] : [{ key, outlines: outlinesOf(model) }],
  );
  const main = fitted.find(({ key }) => key === chosen);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset.
    <svg
      ref={svg}
      className="section-picture"
      viewBox={`${left} ${-top} ${right - left} ${top - bottom}`}
      role="group"
      aria-label={label}
    >
      {main !== undefined && <ChosenWheel name={main.key} outlines={main.outlines} />}
      {view !== null && <Rod view={view} />}
      {fitted
        .filter(({ key }) => key !== chosen)
        .map(({ key, outlines }) => (
          <OtherWheel key={key} name={key} outlines={outlines} />
        ))}
      {main !== undefined && <Datum window={window} plane={main.outlines.plane} scale={scale} />}
      {view !== null && <Joints view={view} scale={scale} />}
      {view !== null && <Gap mark={view.wheelGap} state={state} unit={unit} scale={scale} />}
      <ScaleBar window={window} unit={unit} scale={scale} />
      {handles?.(scale)}
    </svg>
  );
}
