/** A small curve of one measure over the whole travel at the present rack, with the present travel marked on it. */
import './Curve.css';
import { useEffect, useRef } from 'react';
import type { MeasureKey } from '../../solver/index.ts';
import { createCurve } from './curve.ts';
import { sweepRow } from './sweepRows.ts';

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
  useEffect(() => {
    if (!root.current || !canvas.current || !cursor.current || !dot.current) return;
    return createCurve(
      { root: root.current, canvas: canvas.current, cursor: cursor.current, dot: dot.current },
      measure,
    );
  }, [measure]);
  const label = `Curve of ${sweepRow(measure).label} from full droop to full bump at the present rack`;
  return (
    <div ref={root} className="curve" style={{ height }} data-curve={measure}>
      <canvas ref={canvas} role="img" aria-label={label} />
      <div ref={cursor} className="curve-cursor" aria-hidden="true">
        <i ref={dot} />
      </div>
    </div>
  );
}
