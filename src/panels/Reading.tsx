/** One reading: React draws it once, a frame callback keeps it up to date. */
import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { MeasureRow } from '../../solver/index.ts';
import { documentStore, view } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import { figureStyle } from '../words/figures.ts';
import { Icon } from './icons.tsx';
import { Name } from './Name.tsx';
import { type ChangeWords, createReading, type ReadingParts } from './reading.ts';

function useReading(row: MeasureRow, change: ChangeWords) {
  const root = useRef<HTMLDivElement>(null);
  const unit = useStore(view, (state) => state.unit);
  const { before, after, hasUnit } = change;
  // Before the page is painted: the frame that writes the figures is then the first one that shows them.
  useLayoutEffect(() => {
    const parts = root.current === null ? null : partsOf(root.current);
    if (parts === null) return undefined;
    const words = { before, after, hasUnit };
    return onFrame(createReading(parts, row, figureStyle(row.kind, unit), words));
  }, [row, unit, before, after, hasUnit]);
  return root;
}

function partsOf(root: HTMLElement): ReadingParts | null {
  const part = (name: string) => root.querySelector<HTMLElement>(`[data-part="${name}"]`);
  const [number, unit, spread] = [part('number'), part('unit'), part('spread')];
  const [words, change] = [part('words'), part('change')];
  if (number === null || unit === null || spread === null) return null;
  if (words === null || change === null) return null;
  return { root, number, unit, spread, words, change, limit: part('limit') };
}

function Figure({ className }: { className: string }) {
  return (
    <output className={className} data-part="figure" aria-live="off">
      <span data-part="number" />
      <span className="reading-spread" data-part="spread" />
      <span className="reading-unit" data-part="unit" />
    </output>
  );
}

/** "since design pose", or "against yesterday" while a design is held. */
export function useBaselineWords(): string {
  const isHeld = useStore(documentStore, (state) => state.held !== null);
  return isHeld ? 'against yesterday' : 'since design pose';
}

/** A reading to be read across a room, with room for its curve. */
export function MainReading({ row, children }: { row: MeasureRow; children?: ReactNode }) {
  const baseline = useBaselineWords();
  const root = useReading(row, { before: '', after: ` ${baseline}`, hasUnit: true });
  return (
    <div ref={root} className="main-reading" data-reading={row.key}>
      <Name className="main-reading-name" measure={row.key} label={row.label} />
      <Figure className="main-reading-figure" />
      <div className="main-reading-curve">{children}</div>
      <div className="main-reading-words" data-part="words" />
      <div className="main-reading-change" data-part="change" />
    </div>
  );
}

/** A reading in a group. */
export function RowReading({ row }: { row: MeasureRow }) {
  const before = row.key === 'halfTrack' ? 'track change ' : 'change ';
  const root = useReading(row, { before, after: '', hasUnit: false });
  return (
    <div ref={root} className="row-reading" data-reading={row.key}>
      <Name className="row-reading-name" measure={row.key} label={row.label} />
      <Figure className="row-reading-figure" />
      <div className="row-reading-words" data-part="words" />
      <div className="row-reading-change" data-part="change" />
      <div className="row-reading-limit">
        <span className="row-reading-warn">
          <Icon name="warn" size={14} />
        </span>
        <span data-part="limit" />
      </div>
    </div>
  );
}
