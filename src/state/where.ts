/**
 * Where a point may go: what is asked, what is known so far, and the place under the probe. What is asked belongs to the
 * page; numbers that follow the design (stretch, wanted camber rate) do so until someone states them.
 */
import { createStore } from 'zustand/vanilla';
import {
  type Aim,
  angleOf,
  type Best,
  type Model,
  type Picture,
  type Plane,
  type Question,
  type Reach,
  type Subject,
  type Told,
  usualRate,
  usualStretch,
} from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { WhereAnswer, WhereRequest, WhereStart } from '../worker/whereJob.ts';
import type { DocumentStore } from './document.ts';

/** What is stated by hand. */
export interface WhereWish {
  readonly subject: Subject;
  readonly plane: Plane;
  readonly aim: Aim;
  /** mm from the present point to the picture's edges. */
  readonly half: number;
  /** null: as the stops allow. */
  readonly stretch: readonly [number, number] | null;
  /** Wanted rates, degrees per mm; null: of camber as the design has it at ride, so that its curve shall be straight. */
  readonly wanted: { readonly toe: number; readonly camber: number | null };
  /** Greatest numbers that still count as good, degrees. */
  readonly limits: Readonly<Record<'toe' | 'camber', Readonly<Record<Aim, number>>>>;
  readonly reach: Reach;
}

export interface WhereState extends WhereWish {
  /** The model that the answers below are of, or null before the first. */
  readonly model: Model | null;
  readonly question: Question | null;
  readonly start: WhereStart | null;
  readonly picture: Picture | null;
  /** Share of the finest picture that is there. */
  readonly progress: number;
  readonly bests: readonly Best[] | null;
  /** Where the probe is, and what was last told of it: the telling follows a moment later. */
  readonly probeAt: readonly [number, number] | null;
  readonly probe: Told | null;
}

/** Limits to begin with, degrees. Common practice, no source: shops differ. */
const USUAL_LIMITS = {
  toe: { overTravel: 0.1, atRide: 0.1 },
  camber: { overTravel: 0.5, atRide: 0.5 },
} as const;

/** How far an end can be moved by a spacer, a slot or a drilled hole, mm. Common practice, no source. */
const USUAL_REACH: Reach = { first: { minus: 10, plus: 10 }, second: { minus: 10, plus: 10 } };

export type StartWhere = (answer: (answer: WhereAnswer) => void) => Background<WhereRequest>;

export type WhereStore = ReturnType<typeof createWhere>;

/** The question that a wish asks of a model. While a design is held, what follows the design follows that one. */
export function questionOf(model: Model, held: Model | null, wish: WhereWish): Question {
  const { subject, plane, aim, half, reach } = wish;
  const stretch = wish.stretch ?? usualStretch(model);
  const angle = angleOf(subject);
  const wanted = wish.wanted[angle] ?? usualRate(held ?? model, subject);
  return { subject, plane, aim, half, reach, stretch, wanted };
}

export function createWhere(documentStore: DocumentStore, start: StartWhere) {
  const store = createStore<WhereState>(() => ({
    subject: 'rodInner',
    plane: 'front',
    aim: 'overTravel',
    half: 20,
    stretch: null,
    wanted: { toe: 0, camber: null },
    limits: USUAL_LIMITS,
    reach: USUAL_REACH,
    model: null,
    question: null,
    start: null,
    picture: null,
    progress: 0,
    bests: null,
    probeAt: null,
    probe: null,
  }));
  const { getState, setState } = store;
  let service: Background<WhereRequest> | null = null;
  let number = 0;
  let watchers = 0;
  let leave: (() => void) | null = null;
  /** One place is asked about at a time; the newest waits for its answer. */
  let isProbing = false;
  let next: readonly [number, number] | null = null;

  function take(answer: WhereAnswer): void {
    if (answer.number !== number) return;
    if (answer.kind === 'start') setState({ start: answer.start });
    else if (answer.kind === 'picture') {
      setState({ picture: answer.picture, progress: answer.progress });
    } else if (answer.kind === 'bests') setState({ bests: answer.bests });
    else {
      isProbing = false;
      setState({ probe: answer.told });
      sendProbe();
    }
  }

  function ask(): void {
    const { model, held } = documentStore.getState();
    const question = questionOf(model, held, getState());
    number += 1;
    isProbing = false;
    service ??= start(take);
    setState({ model, question, bests: null });
    service.ask({ kind: 'where', number, model, question });
    const { probeAt } = getState();
    if (probeAt !== null) moveProbe(probeAt);
  }

  function sendProbe(): void {
    if (isProbing || next === null) return;
    const at = next;
    next = null;
    isProbing = true;
    service?.ask({ kind: 'probe', number, at });
  }

  /** Asks about the place with these coordinates of the plane, mm. */
  function moveProbe(at: readonly [number, number]): void {
    next = at;
    setState({ probeAt: at });
    sendProbe();
  }

  function dropProbe(): void {
    next = null;
    setState({ probeAt: null, probe: null });
  }

  /** States part of the wish; what was drawn of another point, plane or aim is taken away at once. */
  function wish(part: Partial<WhereWish>): void {
    const before = getState();
    setState(part);
    const now = getState();
    const isOther = (...keys: (keyof WhereWish)[]) => keys.some((key) => now[key] !== before[key]);
    if (isOther('subject', 'plane')) dropProbe();
    if (isOther('subject', 'plane', 'half', 'aim')) {
      setState({ start: null, picture: null, progress: 0 });
    }
    if (watchers > 0) ask();
  }

  /** States the limit of the present aim: nothing is worked out anew. */
  function limit(degrees: number): void {
    const { limits, subject, aim } = getState();
    const angle = angleOf(subject);
    setState({ limits: { ...limits, [angle]: { ...limits[angle], [aim]: degrees } } });
  }

  /** Keeps the answers up to date until the returned function is called; many may watch. */
  function watch(): () => void {
    watchers += 1;
    leave ??= documentStore.subscribe((state, before) => {
      if (state.model !== before.model || state.held !== before.held) ask();
    });
    if (getState().model !== documentStore.getState().model) ask();
    return () => {
      watchers -= 1;
      if (watchers > 0) return;
      leave?.();
      leave = null;
      service?.ask({ kind: 'cancel' });
      setState({ model: null });
      dropProbe();
    };
  }

  return { ...store, watch, wish, limit, moveProbe, dropProbe };
}

/** The limit of the present aim, degrees. */
export function limitOf({ limits, subject, aim }: WhereWish): number {
  return limits[angleOf(subject)][aim];
}
