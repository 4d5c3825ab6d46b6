/** A design's mark: its letter in its shape, its dashes, its name. */
import './markKey.css';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import { type Mark, markColour } from '../state/marks.ts';

const SHAPES: Readonly<Record<Mark['shape'], string>> = {
  disc: 'M11 1.5a9.5 9.5 0 1 1 0 19 9.5 9.5 0 0 1 0-19Z',
  ring: 'M11 1.5a9.5 9.5 0 1 1 0 19 9.5 9.5 0 0 1 0-19Z',
  square: 'M2 2h18v18H2Z',
  triangle: 'M11 0 22.5 21H-.5Z',
  diamond: 'M11-1 23 11 11 23-1 11Z',
};

/** The letter in its shape. */
export function MarkIcon({ mark }: { readonly mark: Mark }) {
  const theme = useStore(view, (state) => state.theme);
  const isRing = mark.shape === 'ring';
  const colour = markColour(mark, theme);
  return (
    <svg className="mark-icon" viewBox="-1 -1 24 24" aria-hidden="true">
      <path
        d={SHAPES[mark.shape]}
        fill={isRing ? 'var(--card-solid)' : colour}
        stroke={colour}
        strokeWidth="2"
        strokeDasharray={isRing ? '3 2' : undefined}
      />
      <text
        x="11"
        y={mark.shape === 'triangle' ? 18.5 : 15.8}
        fill={isRing ? 'var(--ink)' : 'var(--card-solid)'}
      >
        {mark.letter}
      </text>
    </svg>
  );
}

/** A piece of the line its curves are drawn with. */
export function MarkLine({ mark }: { readonly mark: Mark }) {
  const theme = useStore(view, (state) => state.theme);
  return (
    <svg className="mark-line" viewBox="0 0 34 6" aria-hidden="true">
      <path
        d="M1 3h32"
        stroke={markColour(mark, theme)}
        strokeWidth="2.5"
        strokeDasharray={mark.dashes.length === 0 ? undefined : mark.dashes.join(' ')}
      />
    </svg>
  );
}

export function MarkKey({ mark, name }: { readonly mark: Mark; readonly name: string }) {
  return (
    <li className="mark-key">
      <MarkIcon mark={mark} />
      <MarkLine mark={mark} />
      <span title={name}>{name}</span>
    </li>
  );
}
