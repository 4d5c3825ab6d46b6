/** The settings that reach what the present design's targets want, what its hardware can reach, and what settings do besides. */
import { createStore } from 'zustand/vanilla';
import {
  type Model,
  presentSettings,
  type Settings,
  withSettings,
  writeModel,
} from '../../solver/index.ts';
import type { AlignAnswer, AlignAnswers, AlignKind, AlignRequest } from '../worker/alignJob.ts';
import type { Background } from '../worker/background.ts';
import type { DocumentStore } from './document.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender } from './meshSender.ts';
import { createTrials } from './trials.ts';

export type AlignmentState = { readonly [Kind in AlignKind]: AlignAnswers[Kind] | null } & {
  /** True from when settings are asked for until they are put away: then they follow the targets. */
  readonly isAsked: boolean;
  /** The model that `settings` were found for. */
  readonly of: Model | null;
  /** Kinds whose newest question is not answered yet: what is shown of them is of before. */
  readonly pending: ReadonlySet<AlignKind>;
  /** Whether settings are taken in whole marks, shims and flats; else as exact as they were found. */
  readonly isWhole: boolean;
};

/** What decides what can be reached: all of a model but the camber and caster that are wanted of it. */
function reachText({ targets, ...model }: Model): string {
  return writeModel(
    targets?.toe === undefined ? model : { ...model, targets: { toe: targets.toe } },
  );
}

interface Question {
  readonly number: number;
  readonly model: Model;
  readonly of: Model;
}

/** The settings that would be put on: in whole marks where they are wanted so and there are any. */
function chosenOf({ settings, isWhole }: AlignmentState): Settings | null {
  if (settings === null) return null;
  return (isWhole ? settings.rounded : null)?.settings ?? settings.after.settings;
}

export type StartAlign = (answer: (answer: AlignAnswer) => void) => Background<AlignRequest>;

export type AlignmentStore = ReturnType<typeof createAlignment>;

export function createAlignment(
  documentStore: DocumentStore,
  meshStore: MeshStore,
  start: StartAlign,
) {
  const store = createStore<AlignmentState>(() => ({
    settings: null,
    region: null,
    effects: null,
    isAsked: false,
    of: null,
    pending: new Set(),
    isWhole: true,
  }));
  const { getState, setState } = store;
  const trials = createTrials<Settings>(documentStore);
  const sender = createMeshSender(meshStore);
  /** The newest question of each kind: its number, the document's model at the time, and the one it was asked of. */
  const asked = new Map<AlignKind, Question>();
  let service: Background<AlignRequest> | null = null;
  let count = 0;
  let watchers = 0;
  let leave: (() => void) | null = null;
  /** The model with settings on it that were found here: they and their order of work stay as long as it stands. */
  let tried: Model | null = null;
  let isTrying = false;
  let regionOf: string | null = null;

  function take({ kind, number, answer }: AlignAnswer): void {
    const question = asked.get(kind);
    if (question?.number !== number) return;
    const pending = new Set(getState().pending);
    pending.delete(kind);
    setState({ [kind]: answer, pending } as Partial<AlignmentState>);
    if (kind !== 'settings') return;
    setState({ of: question.of });
    askEffects();
  }

  function next(kind: AlignKind, of: Model): { number: number; model: Model } {
    count += 1;
    asked.set(kind, { number: count, model: documentStore.getState().model, of });
    setState({ pending: new Set([...getState().pending, kind]) });
    return { number: count, model: of };
  }

  /** The present model; with settings on trial, as it was set before them: that is how the vehicle still stands. */
  function standing(): Model {
    const { model } = documentStore.getState();
    const { trial } = trials.getState();
    return trial === null ? model : withSettings(model, presentSettings(trial.before));
  }

  function ask(kind: 'settings' | 'region'): void {
    service ??= start(take);
    service.ask({
      kind,
      ...next(kind, kind === 'settings' ? standing() : documentStore.getState().model),
    });
  }

  /** Not while a hand drags what is wanted: the settings of the moment are gone in the next. */
  function askEffects(): void {
    const { of, isAsked } = getState();
    const settings = chosenOf(getState());
    if (!isAsked || of === null || settings === null || service === null) return;
    if (documentStore.getState().mark !== null) return;
    setState({ effects: null });
    sender.send(of, service.ask);
    const set = withSettings(of, settings);
    service.ask({ kind: 'effects', ...next('effects', of), set, meshes: sender.keys(of) });
  }

  function follow(): void {
    if (isTrying) return;
    const { model, mark } = documentStore.getState();
    const reach = reachText(model);
    if (reach !== regionOf) {
      regionOf = reach;
      ask('region');
    }
    const { isAsked, of } = getState();
    if (!isAsked) return;
    if (model !== tried && asked.get('settings')?.model !== model) ask('settings');
    else if (mark === null && asked.get('effects')?.of !== of) askEffects();
  }

  /** Keeps the region, and settings once they were asked for, up to date until the returned function is called. */
  function watch(): () => void {
    watchers += 1;
    leave ??= documentStore.subscribe((state, before) => {
      if (state.model !== before.model || state.mark !== before.mark) follow();
    });
    follow();
    return () => {
      watchers -= 1;
      if (watchers > 0) return;
      service?.ask({ kind: 'cancel' });
      asked.clear();
      regionOf = null;
      leave?.();
      leave = null;
    };
  }

  /** Looks for the settings that reach the targets; from now on they follow what is wanted. */
  function find(): void {
    tried = null;
    setState({ isAsked: true });
    ask('settings');
  }

  function putAway(): void {
    asked.delete('settings');
    asked.delete('effects');
    setState({ isAsked: false, settings: null, effects: null, of: null });
  }

  function takeWhole(isWhole: boolean): void {
    setState({ isWhole });
    if (trials.getState().trial !== null) tryOn();
    askEffects();
  }

  /** Puts the settings on the bench as one entry of the history, the design before them held as the ghost. */
  function tryOn(): boolean {
    const settings = chosenOf(getState());
    if (settings === null) return false;
    // What was found stays as long as it is on the bench: nothing is asked on the way there.
    isTrying = true;
    trials.takeBack();
    const { model: from } = documentStore.getState();
    const isOn = trials.tryOn(settings, from, withSettings(from, settings));
    isTrying = false;
    if (isOn) tried = documentStore.getState().model;
    follow();
    return isOn;
  }

  return { ...store, trials, watch, find, putAway, takeWhole, tryOn, chosenOf };
}
