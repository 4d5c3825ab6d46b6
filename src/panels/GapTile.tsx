/** Tie rod to wheel, always in view: how far, whether it is enough, where. */
import './gapTile.css';
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { statedGap, wantedGap } from '../../solver/index.ts';
import { posed, view } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import type { LengthUnit } from '../state/view.ts';
import { gapUnit, length, lengthNumber, lengthUnitName } from '../words/format.ts';
import { type GapState, gapPlace, gapState, gapVerdict } from './gap.ts';
import { Icon } from './icons.tsx';

const SAID: Readonly<Record<GapState, string>> = {
  clear: 'Tie rod clear of the wheel.',
  near: 'Tie rod nearer to the wheel than wanted.',
  touch: 'Tie rod touches the wheel.',
};

/** Makes the frame callback that writes the tile, a part only when its text changed. */
function createTile(root: HTMLElement, unit: LengthUnit): () => void {
  const part = (name: string) => {
    const element = root.querySelector<HTMLElement>(`[data-part="${name}"]`);
    if (element === null) throw new Error(`The gap tile has no part ${name}.`);
    return element;
  };
  const [figure, verdict, place, wantedText, tyre, said] = [
    part('figure'),
    part('verdict'),
    part('place'),
    part('wanted'),
    part('tyre'),
    part('said'),
  ];
  let state: GapState | null = null;
  // Steps of 0.05 mm, finer than anything shown: the rest of the frame is skipped while nothing moves by that.
  let steps = Number.NaN;
  let tyreSteps = Number.NaN;
  let fromSteps = Number.NaN;
  let model: unknown = null;
  const write = (element: HTMLElement, text: string): void => {
    if (element.textContent !== text) element.textContent = text;
  };
  return () => {
    const { corner, wheelGap, tyreGap } = posed.current();
    const now = Math.round(wheelGap.gap * 20);
    const tyreNow = Math.round(tyreGap.gap * 20);
    const fromNow = Math.round(wheelGap.fromOuter * 2);
    const isSame = now === steps && tyreNow === tyreSteps && fromNow === fromSteps;
    const wanted = wantedGap(corner.model, 'tieRod', 'wheel');
    const stateNow = gapState(wheelGap.gap, wanted);
    if (isSame && corner.model === model && stateNow === state) return;
    [steps, tyreSteps, fromSteps, model] = [now, tyreNow, fromNow, corner.model];
    write(figure, lengthNumber(wheelGap.gap, unit));
    write(verdict, gapVerdict(wheelGap.gap, wanted, unit));
    write(place, gapPlace(wheelGap, unit));
    const isStated = statedGap(corner.model, 'tieRod', 'wheel') !== undefined;
    write(
      wantedText,
      `${length(wanted, unit, unit === 'mm' ? 0 : 1)}${isStated ? '' : ' (common practice)'}`,
    );
    write(tyre, length(tyreGap.gap, unit, unit === 'mm' ? 0 : 1));
    if (stateNow === state) return;
    state = stateNow;
    root.dataset['state'] = state;
    write(said, SAID[state]);
  };
}

export function GapTile() {
  const root = useRef<HTMLElement>(null);
  const unit = useStore(view, (state) => gapUnit(state.unit));
  useEffect(() => {
    return root.current === null ? undefined : onFrame(createTile(root.current, unit));
  }, [unit]);
  return (
    <section ref={root} className="gap-tile" data-panel="gap" aria-labelledby="gap-title">
      <div className="gap-tile-state" aria-hidden="true">
        <span data-when="clear">
          <Icon name="clear" size={22} />
        </span>
        <span data-when="near">
          <Icon name="warn" size={22} />
        </span>
        <span data-when="touch">
          <Icon name="touch" size={22} />
        </span>
      </div>
      <h2 id="gap-title" className="gap-tile-title">
        Tie rod to wheel
      </h2>
      <p className="gap-tile-figure">
        <span data-part="figure" /> <small>{lengthUnitName(unit)}</small>
      </p>
      <p className="gap-tile-verdict" data-part="verdict" />
      <p className="gap-tile-place" data-part="place" />
      <p className="gap-tile-more">
        wanted <span data-part="wanted" />; to tyre <span data-part="tyre" />
      </p>
      <p className="hidden-text" aria-live="polite" data-part="said" />
    </section>
  );
}
