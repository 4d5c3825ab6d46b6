/** The contour's points in the picture, to be dragged, or moved by arrow keys. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { MM_PER_INCH } from '../../../solver/units.ts';
import type { LengthUnit } from '../../state/view.ts';
import { length } from '../../words/format.ts';
import { type Contour, moved } from './contour.ts';

/** Where a pointer is in the picture's millimetres. */
function pictureOf(event: PointerEvent<SVGElement>): readonly [number, number] {
  const svg = event.currentTarget.ownerSVGElement;
  const matrix = svg?.getScreenCTM()?.inverse();
  if (!matrix) return [0, 0];
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
  return [at.x, -at.y];
}

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** One press: a millimetre or a sixteenth; ten at once with Shift, a tenth with Alt. */
function stepOf(event: KeyboardEvent, unit: LengthUnit): number {
  const step = unit === 'mm' ? 1 : MM_PER_INCH / 16;
  return step * (event.shiftKey ? 10 : event.altKey ? 0.1 : 1);
}

interface HandleProps {
  readonly contour: Contour;
  readonly index: number;
  readonly scale: number;
  readonly unit: LengthUnit;
}

function Handle({ contour, index, scale, unit }: HandleProps) {
  const { points, plane } = contour;
  const [s, radius] = points[index] ?? [0, 0];
  /** From the pointer to the point at the start of a drag, so that the point does not jump; null while none is on. */
  const grip = useRef<readonly [number, number] | null>(null);
  const keyed = useRef(false);

  function place(to: readonly [number, number]): void {
    contour.set(moved(points, index, to));
  }

  function end(how: () => void): void {
    if (grip.current === null) return;
    grip.current = null;
    how();
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key === 'Escape' && grip.current !== null) {
      event.preventDefault();
      event.stopPropagation();
      end(contour.cancel);
      return;
    }
    const way = WAYS[event.key];
    if (way === undefined) return;
    event.preventDefault();
    if (!keyed.current) contour.begin();
    keyed.current = true;
    const step = stepOf(event, unit);
    place([s + way[0] * step, radius + way[1] * step]);
  }

  function endKey(): void {
    if (keyed.current) contour.end();
    keyed.current = false;
  }

  const name = `Contour point ${index + 1}: ${length(s, unit)} outboard of the centre plane, radius ${length(radius, unit)}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no buttons of its own.
    <g
      className="section-handle"
      role="button"
      tabIndex={0}
      aria-label={name}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.focus();
        const [x, y] = pictureOf(event);
        grip.current = [s + plane - x, radius - y];
        contour.begin();
      }}
      onPointerMove={(event) => {
        const held = grip.current;
        if (held === null) return;
        const [x, y] = pictureOf(event);
        place([x + held[0] - plane, y + held[1]]);
      }}
      onPointerUp={() => end(contour.end)}
      onPointerCancel={() => end(contour.cancel)}
      onKeyDown={onKeyDown}
      onKeyUp={endKey}
      onBlur={endKey}
    >
      <circle className="section-reach" cx={s + plane} cy={-radius} r={20 / scale} />
      <circle className="section-dot" cx={s + plane} cy={-radius} r={6 / scale} />
    </g>
  );
}

export function ContourHandles({ contour, scale, unit }: Omit<HandleProps, 'index'>) {
  return contour.points.map((_, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list.
    <Handle key={index} contour={contour} index={index} scale={scale} unit={unit} />
  ));
}
