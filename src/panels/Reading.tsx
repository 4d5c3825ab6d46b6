/** One reading: React draws it once, a frame callback keeps it up to date. */
import { type ReactNode, useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { MeasureRow } from '../../solver/index.ts';
import { documentStore, view } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import { figureStyle } from '../words/figures.ts';
import { Name } from './Explanation.tsx';
import { Icon } from './icons.tsx';
import { type ChangeWords, createReading, type ReadingParts } from './reading.ts';

function useReading(row: MeasureRow, change: ChangeWords) {
  const root = useRef<HTMLDivElement>(null);
  const unit = useStore(view, (state) => state.unit);
  const { before, after } = change;
  useEffect(() => {
    const part = (name: string) =>
      root.current?.querySelector<HTMLElement>(`[data-part="${name}"]`) ?? null;
    const [figure, words, changed] = [part('figure'), part('words'), part('change')];
    if (root.current === null || figure === null || words === null || changed === null) {
      return undefined;
    }
    const parts: ReadingParts = {
      root: root.current,
      figure,
      words,
      change: changed,
      limit: part('limit'),
    };
    return onFrame(createReading(parts, row, figureStyle(row.kind, unit), { before, after }));
  }, [row, unit, before, after]);
  return root;
}

/** "since design pose", or "against yesterday" while a design is held. */
export function useBaselineWords(): string {
  const isHeld = useStore(documentStore, (state) => state.held !== null);
  return isHeld ? 'against yesterday' : 'since design pose';
}

/** A reading to be read across a room, with room for its curve. */
export function MainReading({ row, children }: { row: MeasureRow; children?: ReactNode }) {
  const baseline = useBaselineWords();
  const root = useReading(row, { before: '', after: ` ${baseline}` });
  return (
    <div ref={root} className="main-reading" data-reading={row.key}>
      <Name
        className="main-reading-name"
        measure={row.key}
        label={row.label}
        text={row.explanation}
      />
      <output className="main-reading-figure" data-part="figure" aria-live="off" />
      <div className="main-reading-curve">{children}</div>
      <div className="main-reading-words" data-part="words" />
      <div className="main-reading-change" data-part="change" />
    </div>
  );
}

/** A reading in a group. */
export function RowReading({ row }: { row: MeasureRow }) {
  const before = row.key === 'halfTrack' ? 'track change ' : 'change ';
  const root = useReading(row, { before, after: '' });
  return (
    <div ref={root} className="row-reading" data-reading={row.key}>
      <Name
        className="row-reading-name"
        measure={row.key}
        label={row.label}
        text={row.explanation}
      />
      <output className="row-reading-figure" data-part="figure" aria-live="off" />
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
