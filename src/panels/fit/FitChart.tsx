/** A quantity over travel before and after the fit, its bands, and the readings with their ±. */
import { useEffect, useId, useRef, useState } from 'react';
import type { FitCurve } from '../../../solver/fit/answers.ts';
import type { Fit } from '../../../solver/fit/fit.ts';
import { READ_TABLE } from '../../../solver/fit/reading.ts';
import { measureRow } from '../../../solver/index.ts';
import { BAND_WORDS } from '../../charts/band.ts';
import { lengthTicks, ticksOf } from '../../charts/ticks.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, lengthUnitName } from '../../words/format.ts';
import {
  bandPath,
  type ChartFrame,
  type ChartReading,
  chartFrame,
  linePath,
  readingsOn,
} from './chartFrame.ts';
import { readName } from './fitWords.ts';

const HEIGHT = 230;
/** Half the width of a reading's bar ends, and half the size of its dot or cross. */
const END = 4;
const DOT = 3.5;

function useWidth() {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { place, width };
}

function Axes({
  curve,
  frame,
  unit,
}: {
  readonly curve: FitCurve;
  readonly frame: ChartFrame;
  readonly unit: LengthUnit;
}) {
  const { left, right, top, bottom, travels, values, x, y, height } = frame;
  const { unit: of, label } = READ_TABLE[curve.quantity];
  const across = lengthTicks(travels[0], travels[1], Math.max(3, (right - left) / 60), unit);
  const up = of === 'degree' ? ticksOf(values[0], values[1], 6) : lengthTicks(...values, 6, unit);
  const counted = of === 'degree' ? '°' : lengthUnitName(unit);
  return (
    <g className="fit-axes">
      {across.map(({ at, text }) => (
        <g key={text}>
          <line x1={x(at)} x2={x(at)} y1={top} y2={bottom} />
          <text x={x(at)} y={bottom + 15} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {up.map(({ at, text }) => (
        <g key={text}>
          <line x1={left} x2={right} y1={y(at)} y2={y(at)} />
          <text x={left - 6} y={y(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <text x={(left + right) / 2} y={height - 6} textAnchor="middle">
        travel, {lengthUnitName(unit)}
      </text>
      <text transform={`translate(13 ${(top + bottom) / 2}) rotate(-90)`} textAnchor="middle">
        {label}, {counted}
      </text>
    </g>
  );
}

function Read({ on, frame }: { readonly on: ChartReading; readonly frame: ChartFrame }) {
  const { reading, plusMinus } = on.fitted;
  const x = frame.x(reading.travel);
  const y = frame.y(reading.value);
  const high = frame.y(reading.value + plusMinus);
  const low = frame.y(reading.value - plusMinus);
  return (
    <g
      className="fit-read"
      data-travel={reading.travel}
      data-value={reading.value}
      data-suspect={on.isSuspect || undefined}
    >
      <path d={`M${x} ${high}V${low}M${x - END} ${high}h${2 * END}M${x - END} ${low}h${2 * END}`} />
      {on.isSuspect ? (
        <path className="fit-cross" d={`M${x - 6} ${y - 6}l12 12M${x + 6} ${y - 6}l-12 12`} />
      ) : (
        <circle cx={x} cy={y} r={DOT} />
      )}
    </g>
  );
}

/** "+ front edge in, − front edge out". */
function signWords({ quantity }: FitCurve): string | null {
  if (quantity === 'damperLength') return null;
  const { sense } = measureRow(quantity === 'toeChange' ? 'toe' : quantity);
  if (sense === undefined) return null;
  const bare = (words: string): string => words.replace(/ ?\{\}/, '').trim();
  return `+ ${bare(sense.positive)}, − ${bare(sense.negative)}`;
}

function described(curve: FitCurve, on: readonly ChartReading[], unit: LengthUnit, ride: number) {
  const { label } = READ_TABLE[curve.quantity];
  const off = on.filter(({ isSuspect }) => isSuspect);
  const names = off.map(({ fitted }) => readName(fitted.reading, unit, ride)).join(', ');
  return `${label} over travel before and after the fit, with ${on.length} readings${names === '' ? '' : `; off: ${names}`}`;
}

export function FitChart({
  fit,
  curve,
  unit: shown,
}: {
  readonly fit: Fit;
  readonly curve: FitCurve;
  readonly unit: LengthUnit;
}) {
  const { place, width } = useWidth();
  const clip = useId();
  const unit = gapUnit(shown);
  const on = readingsOn(fit, curve);
  const frame = chartFrame(curve, on, width, HEIGHT);
  const ride = fit.model.travel.ride ?? 0;
  const { left, right, top, bottom } = frame;
  return (
    <figure className="fit-chart" data-curve={curve.quantity}>
      <div ref={place} style={{ height: HEIGHT }}>
        {width > 0 && (
          <svg
            width={width}
            height={HEIGHT}
            role="img"
            aria-label={described(curve, on, unit, ride)}
          >
            <clipPath id={clip}>
              <rect x={left} y={top} width={right - left} height={bottom - top} />
            </clipPath>
            <Axes curve={curve} frame={frame} unit={unit} />
            <g clipPath={`url(#${clip})`}>
              <path className="fit-band-before" d={bandPath(curve, 'before', frame)} />
              <path className="fit-band-after" d={bandPath(curve, 'after', frame)} />
              <path className="fit-line-before" d={linePath(curve, 'before', frame)} />
              <path className="fit-line-after" d={linePath(curve, 'after', frame)} />
              {on.map((one, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: readings may be alike, and keep their order.
                <Read key={index} on={one} frame={frame} />
              ))}
            </g>
          </svg>
        )}
      </div>
      <figcaption>
        <span className="fit-key" data-key="before">
          points as measured
        </span>
        <span className="fit-key" data-key="after">
          fitted
        </span>
        <span className="fit-key" data-key="read">
          read, with its ±
        </span>
        <span>
          {signWords(curve)}; {BAND_WORDS}
        </span>
      </figcaption>
    </figure>
  );
}
