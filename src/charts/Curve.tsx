/** A small curve of one measure over the whole travel at the present rack, with the present travel marked on it. */
import './Curve.css';
import { useEffect, useRef } from 'react';
import type { MeasureKey } from '../../solver/index.ts';
import { createCurve } from './curve.ts';
import { sweepRow } from './sweepRows.ts';
import { useBeside } from './useBeside.ts';

export interface CurveProps {
  readonly measure: MeasureKey;
  /** Height in px; the width is its place's. */
  readonly height?: number;
}

export function Curve({ measure, height = 44 }: CurveProps) {
  const root = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const cursor = useRef<HTMLDivElement>(null);
  const dot = useRef<HTMLElement>(null);
  const least = useRef<HTMLSpanElement>(null);
  const most = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (!root.current || !canvas.current || !cursor.current || !dot.current) return;
    if (!least.current || !most.current) return;
    return createCurve(
      {
        root: root.current,
        canvas: canvas.current,
        cursor: cursor.current,
        dot: dot.current,
        least: least.current,
        most: most.current,
      },
      measure,
    );
  }, [measure]);
  const designs = useBeside();
  const beside = designs.map(({ name }) => name).join(', ');
  const label = `Curve of ${sweepRow(measure).label} from full droop to full bump at the present rack`;
  const whole = beside === '' ? label : `${label}; beside it ${beside}`;
  return (
    <div ref={root} className="curve" style={{ height }} data-curve={measure}>
      <canvas ref={canvas} role="img" aria-label={whole} />
      <div ref={cursor} className="curve-cursor" aria-hidden="true">
        <i ref={dot} />
      </div>
      <span ref={most} className="curve-figure" aria-hidden="true" />
      <span ref={least} className="curve-figure" aria-hidden="true" />
      <span className="curve-ends" aria-hidden="true">
        <span>droop</span>
        <span>bump</span>
      </span>
    </div>
  );
}
