/** How well bump steer is known in the present pose, said where it is read. */
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { spreads } from '../../state/trusted.ts';
import { figureStyle } from '../../words/figures.ts';
import { knownFigure } from '../../words/known.ts';

export default function BumpSaid() {
  const unit = useStore(view, (state) => state.unit);
  const plain = figureStyle('degreePerMm', unit);
  const spread = useStore(
    spreads,
    ({ pose }) => knownFigure(plain, pose?.bumpSteer ?? Number.NaN)?.spread ?? '',
  );
  if (spread === '') return null;
  return <> From these points it is not known to better than {spread + plain.unit} here.</>;
}
