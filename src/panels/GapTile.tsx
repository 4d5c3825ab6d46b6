/** The tie rod's gap to wheel or tyre, whichever the map shows, always in view: how far, whether it is enough, where. */
import './gapTile.css';
import { useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { type Model, type RodGap, statedGap, wantedGap } from '../../solver/index.ts';
import { posed, view } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import { lockMaps } from '../state/mapped.ts';
import type { Posed } from '../state/posed.ts';
import type { LengthUnit } from '../state/view.ts';
import { gapUnit, length, lengthNumber, lengthUnitName } from '../words/format.ts';
import { type GapState, gapPlace, gapState, gapVerdict } from './gap.ts';
import { Icon } from './icons.tsx';

const SAID: Readonly<Record<GapState, string>> = {
  clear: 'Tie rod clear of the',
  near: 'Tie rod nearer than wanted to the',
  touch: 'Tie rod touches the',
};
const RANK: Readonly<Record<GapState, number>> = { clear: 0, near: 1, touch: 2 };

/** What the tie rod is held against. */
type Against = 'wheel' | 'tyre';

const OTHER: Readonly<Record<Against, Against>> = { wheel: 'tyre', tyre: 'wheel' };

function gapOf(posed: Posed, pair: Against): RodGap {
  return pair === 'wheel' ? posed.wheelGap : posed.tyreGap;
}

function stateOf(now: Posed, pair: Against): GapState {
  return gapState(gapOf(now, pair).gap, wantedGap(now.corner.model, 'tieRod', pair));
}

function write(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** "8 mm", "8 mm (common practice)". */
function wantedWords(model: Model, pair: Against, unit: LengthUnit): string {
  const wanted = length(wantedGap(model, 'tieRod', pair), unit, unit === 'mm' ? 0 : 1);
  const isStated = statedGap(model, 'tieRod', pair) !== undefined;
  return isStated ? wanted : `${wanted} (common practice)`;
}

/** "3.1 mm less than yesterday; ", nothing while nothing is held. */
function changeWords(mm: number, unit: LengthUnit): string {
  if (!Number.isFinite(mm)) return '';
  const size = length(Math.abs(mm), unit);
  if (size === length(0, unit)) return 'as yesterday; ';
  return `${size} ${mm < 0 ? 'less' : 'more'} than yesterday; `;
}

/** Makes the frame callback that writes the tile, a part only when its text changed. */
function createTile(root: HTMLElement, unit: LengthUnit, pair: Against): () => void {
  const part = (name: string) => {
    const element = root.querySelector<HTMLElement>(`[data-part="${name}"]`);
    if (element === null) throw new Error(`The gap tile has no part ${name}.`);
    return element;
  };
  const [figure, verdict, place, change] = ['figure', 'verdict', 'place', 'change'].map(part);
  const [wanted, other, said] = ['wanted', 'other', 'said'].map(part);
  const otherPair = OTHER[pair];
  // Steps of 0.05 mm, finer than anything shown: the rest of the frame is skipped while nothing moves by that.
  const seen = { gap: Number.NaN, other: Number.NaN, from: Number.NaN, before: Number.NaN };
  let model: Model | null = null;
  let state: GapState | null = null;
  let worse: Against = pair;

  /** True when anything that is shown has changed since it was last asked. */
  function isNew(now: Posed, before: number): boolean {
    const gap = Math.round(gapOf(now, pair).gap * 20);
    const aside = Math.round(gapOf(now, otherPair).gap * 20);
    const from = Math.round(gapOf(now, pair).fromOuter * 2);
    const then = Math.round(before * 20);
    const isSame =
      gap === seen.gap &&
      aside === seen.other &&
      from === seen.from &&
      Object.is(then, seen.before);
    if (isSame && now.corner.model === model) return false;
    seen.gap = gap;
    seen.other = aside;
    seen.from = from;
    seen.before = then;
    model = now.corner.model;
    return true;
  }

  /** The verdict is the pair's own, unless the other pair is worse off: a touch is never left unsaid. */
  function writeVerdict(now: Posed): void {
    const [own, aside] = [stateOf(now, pair), stateOf(now, otherPair)];
    const isOther = RANK[aside] > RANK[own];
    const [next, which] = isOther ? ([aside, otherPair] as const) : ([own, pair] as const);
    const { gap } = gapOf(now, which);
    const words = gapVerdict(gap, wantedGap(now.corner.model, 'tieRod', which), unit);
    write(verdict!, isOther ? `to the ${which}: ${words}` : words);
    if (next === state && which === worse) return;
    state = next;
    worse = which;
    root.dataset['state'] = state;
    write(said!, `${SAID[state]} ${which}.`);
  }

  return () => {
    const now = posed.current();
    const held = posed.held();
    const before = held === null ? Number.NaN : gapOf(held, pair).gap;
    if (!isNew(now, before)) return;
    const gap = gapOf(now, pair);
    write(figure!, lengthNumber(gap.gap, unit));
    write(place!, gapPlace(gap, unit));
    write(change!, changeWords(gap.gap - before, unit));
    write(wanted!, wantedWords(now.corner.model, pair, unit));
    write(other!, length(gapOf(now, otherPair).gap, unit, unit === 'mm' ? 0 : 1));
    writeVerdict(now);
  };
}

export function GapTile() {
  const root = useRef<HTMLElement>(null);
  const unit = useStore(view, (state) => gapUnit(state.unit));
  const pair = useStore(
    lockMaps,
    ({ pair: chosen }): Against => (chosen === 'tieRod/tyre' ? 'tyre' : 'wheel'),
  );
  // Never painted empty: it would grow under the hand.
  useLayoutEffect(() => {
    return root.current === null ? undefined : onFrame(createTile(root.current, unit, pair));
  }, [unit, pair]);
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
        {`Tie rod to ${pair}`}
      </h2>
      <p className="gap-tile-figure">
        <span data-part="figure" /> <small>{lengthUnitName(unit)}</small>
      </p>
      <p className="gap-tile-verdict" data-part="verdict" />
      <p className="gap-tile-place" data-part="place" />
      <p className="gap-tile-more">
        <strong data-part="change" />
        wanted <span data-part="wanted" />; {`to ${OTHER[pair]} `}
        <span data-part="other" />
      </p>
      <p className="hidden-text" aria-live="polite" data-part="said" />
    </section>
  );
}
