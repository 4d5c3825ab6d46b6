/** What is proven of the present design's watched pairs, and how far the proof of it has come. */
import { createStore } from 'zustand/vanilla';
import type { CertifiedRange } from '../../solver/certify/range.ts';
import type { PairResult } from '../../solver/certify/result.ts';
import type { Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { MeshKeys } from '../worker/meshShelf.ts';
import type { ProofAnswer, ProofRequest } from '../worker/proofJob.ts';
import type { DocumentStore } from './document.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender, sameKeys } from './meshSender.ts';

/** running: pairs come in; done: all are there; stopped: by hand, or nothing was asked yet. */
export type ProofStage = 'running' | 'done' | 'stopped';

export interface ProofsState {
  readonly stage: ProofStage;
  /** 0 to 1. */
  readonly progress: number;
  /** The model the results are of; null before the first. */
  readonly model: Model | null;
  readonly range: CertifiedRange | null;
  /** Pairs proven so far, of `count`. */
  readonly results: readonly PairResult[];
  readonly count: number;
}

export type StartProofs = (answer: (answer: ProofAnswer) => void) => Background<ProofRequest>;

export type Proofs = ReturnType<typeof createProofs>;

export function createProofs(
  documentStore: DocumentStore,
  meshStore: MeshStore,
  start: StartProofs,
) {
  const store = createStore<ProofsState>(() => ({
    stage: 'stopped',
    progress: 0,
    model: null,
    range: null,
    results: [],
    count: 0,
  }));
  const { getState, setState } = store;
  const sender = createMeshSender(meshStore);
  let service: Background<ProofRequest> | null = null;
  let number = 0;
  let asked: { readonly model: Model; readonly meshes: MeshKeys } | null = null;
  let watchers = 0;
  let leave: (() => void) | null = null;

  function take(answer: ProofAnswer): void {
    if (answer.number !== number || getState().stage !== 'running') return;
    setState({
      stage: answer.isDone ? 'done' : 'running',
      progress: answer.progress,
      range: answer.range,
      results: [...getState().results, ...answer.proven],
      count: answer.count,
    });
  }

  /** Proves the present design anew; what was being proven is dropped. */
  function prove(): void {
    const { model } = documentStore.getState();
    service ??= start(take);
    const { ask } = service;
    const meshes = sender.keys(model);
    sender.send(model, ask);
    asked = { model, meshes };
    number += 1;
    setState({ stage: 'running', progress: 0, model, results: [], count: 0 });
    ask({ kind: 'prove', number, model, meshes });
  }

  function stop(): void {
    if (getState().stage !== 'running') return;
    service?.ask({ kind: 'cancel' });
    setState({ stage: 'stopped' });
  }

  /** Proves whatever is not proven yet of the present design and its meshes. */
  function follow(): void {
    const { model } = documentStore.getState();
    const isAsked = asked?.model === model && sameKeys(asked.meshes, sender.keys(model));
    if (isAsked) return;
    prove();
  }

  /** Keeps the proof up to date until the returned function is called; many may watch. */
  function watch(): () => void {
    watchers += 1;
    if (leave === null) {
      const exits = [
        documentStore.subscribe((state, before) => {
          if (state.model !== before.model) follow();
        }),
        meshStore.subscribe((state, before) => {
          if (state.files !== before.files) follow();
        }),
      ];
      leave = () => {
        for (const exit of exits) exit();
      };
    }
    follow();
    return () => {
      watchers -= 1;
      if (watchers > 0) return;
      leave?.();
      leave = null;
      stop();
      if (getState().stage === 'stopped') asked = null;
    };
  }

  return { ...store, watch, prove, stop };
}
