/** What must not be missed, over the stage: a pose out of reach, and limits that the pose lies outside of. */
import './banner.css';
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import {
  type Corner,
  isOutside,
  type Limit,
  limitedValue,
  limitsOf,
  type Outcome,
  Slot,
} from '../../solver/index.ts';
import { posed, view } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import type { LengthUnit } from '../state/view.ts';
import { signedLength } from '../words/format.ts';
import { Icon } from './icons.tsx';
import { outsideLine } from './limitWords.ts';

const FAILS: Readonly<Record<Exclude<Outcome, 'reached'>, string>> = {
  lowerArm: 'the lower arm cannot keep its length',
  upperArm: 'the upper arm cannot keep its length',
  tieRod: 'the tie rod cannot keep its length',
};

/** "Out of reach: the tie rod cannot keep its length; last reachable at travel +87.3 mm, rack 0.0 mm." */
export function outOfReach(
  fails: Exclude<Outcome, 'reached'>,
  travel: number,
  rack: number,
  unit: LengthUnit,
): string {
  return `Out of reach: ${FAILS[fails]}; last reachable at travel ${signedLength(travel, unit)}, rack ${signedLength(rack, unit)}. Readings are those of that pose.`;
}

/** Makes the frame callback of the out-of-reach line. */
function createReach(line: HTMLElement, text: HTMLElement, unit: LengthUnit): () => void {
  let outcome: Outcome | null = null;
  let travel = Number.NaN;
  let rack = Number.NaN;
  return () => {
    const { pose } = posed.current();
    const isSame = pose.outcome === outcome && pose.lastTravel === travel && pose.lastRack === rack;
    if (isSame || (pose.outcome === 'reached' && outcome === 'reached')) return;
    outcome = pose.outcome;
    travel = pose.lastTravel;
    rack = pose.lastRack;
    line.hidden = outcome === 'reached';
    text.textContent = outcome === 'reached' ? '' : outOfReach(outcome, travel, rack, unit);
  };
}

/** Makes the frame callback of the limits' line. */
function createLimits(line: HTMLElement, text: HTMLElement): () => void {
  let corner: Corner | null = null;
  let limits: readonly Limit[] = [];
  // One bit per limit, and one more for a drop link that cannot reach: compared before any text is made.
  let outside = 0;
  return () => {
    const { corner: next, pose, measures } = posed.current();
    if (next !== corner) {
      corner = next;
      limits = limitsOf(next.model);
      outside = -1;
    }
    let now = 0;
    for (let i = 0; i < limits.length; i += 1) {
      const limit = limits[i] as Limit;
      if (isOutside(limit, limitedValue(limit, pose, measures))) now |= 1 << i;
    }
    const isLinkOut = next.lever !== null && !((pose.data[Slot.leverRoom] ?? 0) > 0);
    if (isLinkOut) now |= 1 << limits.length;
    if (now === outside) return;
    outside = now;
    const names = limits.filter((_, i) => (now & (1 << i)) !== 0).map(({ name }) => name);
    if (isLinkOut) names.push('antiRollBar.link');
    line.hidden = names.length === 0;
    text.textContent = outsideLine(names);
  };
}

const UPSIDE_DOWN =
  'The upper ball joint is below the lower one: caster, kingpin inclination, scrub and trail are read off an axis that points down.';

/** Makes the frame callback of the line about a design that hardly anyone can have meant; it goes on being solved. */
function createDoubt(line: HTMLElement, text: HTMLElement): () => void {
  return () => {
    const { data } = posed.current().pose;
    const isDoubted = data[Slot.upper + 2]! <= data[Slot.lower + 2]!;
    if (line.hidden !== isDoubted) return;
    line.hidden = !isDoubted;
    text.textContent = isDoubted ? UPSIDE_DOWN : '';
  };
}

function useLine(make: (line: HTMLElement, text: HTMLElement) => () => void) {
  const line = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const text = line.current?.querySelector('span');
    return line.current && text ? onFrame(make(line.current, text)) : undefined;
  }, [make]);
  return line;
}

function ReachLine({ unit }: { unit: LengthUnit }) {
  const line = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const text = line.current?.querySelector('span');
    return line.current && text ? onFrame(createReach(line.current, text, unit)) : undefined;
  }, [unit]);
  return (
    <div ref={line} className="banner-line banner-reach" data-banner="reach" hidden>
      <Icon name="touch" size={20} />
      <span />
    </div>
  );
}

export function Banner() {
  const unit = useStore(view, (state) => state.unit);
  const limits = useLine(createLimits);
  const doubt = useLine(createDoubt);
  return (
    <div className="banner" role="status">
      <ReachLine unit={unit} />
      <div ref={limits} className="banner-line banner-limits" data-banner="limits" hidden>
        <Icon name="warn" size={18} />
        <span />
      </div>
      <div ref={doubt} className="banner-line banner-limits" data-banner="doubt" hidden>
        <Icon name="warn" size={18} />
        <span />
      </div>
    </div>
  );
}
