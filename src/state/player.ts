/**
 * The play button's cycles: smooth (sinusoidal) ways through travel, lock, or both, from wherever the bench stands. A
 * move that is not the player's own (a drag, a key, a slider) stops it.
 */
import { rackRange } from '../../solver/model/defaults.ts';
import type { DocumentStore } from './document.ts';
import { type Cycle, type Inputs, travelRange } from './inputs.ts';

/** Seconds of a full bump cycle and of a full lock cycle. */
const TRAVEL_PERIOD = 4;
const LOCK_PERIOD = 5;
/** Lock cycles per travel cycle when both run: the golden ratio, so that the way never closes and covers the map. */
const BOTH_RATIO = (1 + Math.sqrt(5)) / 2;
/** Pace for people who ask their system for less motion. */
const CALM_PACE = 0.35;
/** Longest step of the clock, s: after a pause of the page the cycle goes on where it was. */
const LONGEST_STEP = 0.1;

/** A range's middle and half width. */
function swing([least, most]: readonly [number, number]): readonly [number, number] {
  return [(least + most) / 2, (most - least) / 2];
}

/** Phase, rad, at which the cycle stands at `value`; 0 in a range without width. */
export function phaseAt(value: number, range: readonly [number, number]): number {
  const [middle, half] = swing(range);
  if (!(half > 0)) return 0;
  return Math.asin(Math.min(1, Math.max(-1, (value - middle) / half)));
}

/** Value of the cycle at a phase, rad: middle + half width × sin(phase). */
export function cycleAt(phase: number, range: readonly [number, number]): number {
  const [middle, half] = swing(range);
  return middle + half * Math.sin(phase);
}

/** Phase, rad, that `seconds` of a cycle add to travel and to rack. */
export function phaseSteps(cycle: Cycle, seconds: number): readonly [number, number] {
  const turn = 2 * Math.PI * seconds;
  if (cycle === 'bump') return [turn / TRAVEL_PERIOD, 0];
  if (cycle === 'lock') return [0, turn / LOCK_PERIOD];
  return [turn / TRAVEL_PERIOD, (turn * BOTH_RATIO) / TRAVEL_PERIOD];
}

/** The clock the player runs by; a test gives its own. */
export interface PlayerClock {
  readonly request: (run: (time: number) => void) => void;
  readonly isCalm: () => boolean;
}

const PAGE_CLOCK: PlayerClock = {
  request: (run) => {
    requestAnimationFrame(run);
  },
  isCalm: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
};

/** Runs the cycle `inputs.playing` names, from now until the returned function is called. */
export function runPlayer(
  documentStore: DocumentStore,
  inputs: Inputs,
  clock: PlayerClock = PAGE_CLOCK,
): () => void {
  let cycle: Cycle | null = null;
  let travelPhase = 0;
  let rackPhase = 0;
  let last = 0;
  let isOwn = false;
  let isAsked = false;

  function step(time: number): void {
    isAsked = false;
    if (cycle === null) return;
    const { model } = documentStore.getState();
    const travels = travelRange(model);
    const racks = rackRange(model.steering);
    const pace = clock.isCalm() ? CALM_PACE : 1;
    const seconds = last === 0 ? 0 : Math.min(LONGEST_STEP, (time - last) / 1000) * pace;
    last = time;
    const [travelStep, rackStep] = phaseSteps(cycle, seconds);
    travelPhase += travelStep;
    rackPhase += rackStep;
    const now = inputs.getState();
    isOwn = true;
    inputs.move(
      cycle === 'lock' ? now.travel : cycleAt(travelPhase, travels),
      cycle === 'bump' ? now.rack : cycleAt(rackPhase, racks),
    );
    isOwn = false;
    ask();
  }

  function ask(): void {
    if (isAsked) return;
    isAsked = true;
    clock.request(step);
  }

  function start(wanted: Cycle): void {
    const { model } = documentStore.getState();
    const { travel, rack } = inputs.getState();
    cycle = wanted;
    travelPhase = phaseAt(travel, travelRange(model));
    rackPhase = phaseAt(rack, rackRange(model.steering));
    last = 0;
    ask();
  }

  const leave = inputs.subscribe((state, before) => {
    if (state.playing !== before.playing) {
      if (state.playing === null) cycle = null;
      else start(state.playing);
      return;
    }
    const hasMoved = state.travel !== before.travel || state.rack !== before.rack;
    if (cycle !== null && hasMoved && !isOwn) inputs.play(null);
  });
  const { playing } = inputs.getState();
  if (playing !== null) start(playing);
  return () => {
    cycle = null;
    leave();
  };
}
