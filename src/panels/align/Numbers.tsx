/** The three angles that are set, large, with what their signs mean and how far they are from what is wanted. */
import { useEffect, useRef } from 'react';
import { inWords, type MeasureRow, measureRow, type Target } from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { onFrame } from '../../state/frame.ts';
import { figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { angle, fixed } from '../../words/format.ts';
import { Icon } from '../icons.tsx';
import { ANGLES, type AngleKey, setAngle } from './setPose.ts';

const STYLE = figureStyle('degree', 'mm');

interface Parts {
  readonly root: HTMLElement;
  readonly number: HTMLElement;
  readonly words: HTMLElement;
  readonly target: HTMLElement;
}

function partsOf(root: HTMLElement): Parts | null {
  const part = (name: string) => root.querySelector<HTMLElement>(`[data-part="${name}"]`);
  const [number, words, target] = [part('number'), part('words'), part('target')];
  if (number === null || words === null || target === null) return null;
  return { root, number, words, target };
}

/** Whether a value may stand: differences that the page cannot show do not count. */
function isWithin(value: number, { value: wanted, plusMinus }: Target): boolean {
  return Math.abs(value - wanted) <= plusMinus + 1e-9;
}

/** "0.35° over 4.50 ± 0.75: within"; of a corner that is out of reach only what is wanted. */
function targetWords(value: number, target: Target | undefined): string {
  if (target === undefined) return 'no target';
  const { value: wanted, plusMinus } = target;
  const aim = `${fixed(wanted, 2)} ± ${fixed(plusMinus, 2)}`;
  if (!Number.isFinite(value)) return `wanted ${aim}`;
  const off = value - wanted;
  const isOn = Math.abs(off) < 0.005;
  const size = isOn ? 'on' : `${angle(Math.abs(off))} ${off > 0 ? 'over' : 'under'}`;
  return `${size} ${aim}: ${isWithin(value, target) ? 'within' : 'outside'}`;
}

function createNumber({ root, number, words, target }: Parts, key: AngleKey, row: MeasureRow) {
  let shown = Number.NEGATIVE_INFINITY;
  let aim: Target | undefined | null = null;
  return (): void => {
    const value = setAngle(key);
    const wanted = documentStore.getState().model.targets?.[key];
    if (Object.is(value, shown) && wanted === aim) return;
    shown = value;
    aim = wanted;
    const isThere = Number.isFinite(value);
    const count = figureSteps(value, STYLE);
    number.textContent = isThere ? `${figureNumber(count, STYLE)}°` : '–';
    words.textContent = isThere ? (inWords(row, count) ?? '') : 'out of reach';
    const isTold = isThere && wanted !== undefined;
    target.textContent = targetWords(value, wanted);
    root.dataset['state'] = isTold ? (isWithin(value, wanted) ? 'clear' : 'near') : 'none';
  };
}

function Angle({ name }: { readonly name: AngleKey }) {
  const root = useRef<HTMLDivElement>(null);
  const row = measureRow(name);
  useEffect(() => {
    const parts = root.current === null ? null : partsOf(root.current);
    return parts === null ? undefined : onFrame(createNumber(parts, name, row));
  }, [name, row]);
  return (
    <div ref={root} className="align-angle" data-angle={name}>
      <h3>{row.label}</h3>
      <output className="align-figure" data-part="number" aria-live="off" />
      <span className="align-words" data-part="words" />
      <span className="align-target">
        <span className="align-within">
          <Icon name="clear" size={14} />
        </span>
        <span className="align-outside">
          <Icon name="warn" size={14} />
        </span>
        <span data-part="target" />
      </span>
    </div>
  );
}

export function Numbers() {
  return (
    <section className="align-numbers" aria-label="Set now, at ride height and straight ahead">
      {ANGLES.map((name) => (
        <Angle key={name} name={name} />
      ))}
    </section>
  );
}
