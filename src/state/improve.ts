/** Better points of the present design: asked for by hand, searched in several workers, tried as a ghost, kept. */
import { createStore } from 'zustand/vanilla';
import type { Answer, Answers } from '../../solver/improve/answer.ts';
import type { Plan } from '../../solver/improve/plan.ts';
import type { Candidate } from '../../solver/improve/search.ts';
import type { Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { ImproveAnswer, ImproveRequest } from '../worker/improveJob.ts';
import type { DocumentStore } from './document.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender } from './meshSender.ts';
import { createTrials } from './trials.ts';

export interface ImproveState {
  /** idle: nothing is being worked out; done: `found` answers, null where the design cannot be assembled. */
  readonly stage: 'idle' | 'running' | 'done';
  readonly progress: number;
  /** What was asked for last, of which design. */
  readonly plan: Plan | null;
  readonly model: Model | null;
  readonly found: Answers | null;
}

export type StartImprove = (answer: (answer: ImproveAnswer) => void) => Background<ImproveRequest>;

export type ImproveStore = ReturnType<typeof createImprove>;

/** What the search takes of the whole; the rest is proof. */
const SEARCH_SHARE = 0.75;

export function createImprove(
  documentStore: DocumentStore,
  meshStore: MeshStore,
  start: StartImprove,
  workers: number,
) {
  const store = createStore<ImproveState>(() => ({
    stage: 'idle',
    progress: 0,
    plan: null,
    model: null,
    found: null,
  }));
  const { getState, setState } = store;
  const trials = createTrials<Answer>(documentStore);
  let services: readonly Background<ImproveRequest>[] = [];
  const senders = Array.from({ length: workers }, () => createMeshSender(meshStore));
  const shares = new Float64Array(workers);
  let found: (readonly (Candidate | null)[])[] = [];
  let number = 0;

  function asked() {
    const { model, plan } = getState();
    if (model === null || plan === null) return null;
    return { number, model, plan, meshes: senders[0]!.keys(model) };
  }

  /** When all have searched, the first of them answers; in the order of the starts, whoever was first. */
  function collect(candidates: readonly (Candidate | null)[] | null): void {
    const question = asked();
    if (question === null) return;
    if (candidates === null) {
      setState({ stage: 'done', progress: 1, found: null });
      return;
    }
    found = [...found, candidates];
    if (found.length < workers) return;
    const all = found.flat().sort((a, b) => (a?.start ?? 0) - (b?.start ?? 0));
    services[0]!.ask({ kind: 'answer', ...question, candidates: all });
  }

  function take(worker: number, answer: ImproveAnswer): void {
    if (answer.number !== number || getState().stage !== 'running') return;
    if (answer.kind === 'answers') {
      setState({ stage: 'done', progress: 1, found: answer.answers });
    } else if (answer.kind === 'found') {
      shares[worker] = 1;
      collect(answer.candidates);
    } else if (answer.of === 'answer') {
      setState({ progress: SEARCH_SHARE + (1 - SEARCH_SHARE) * answer.progress });
    } else {
      shares[worker] = answer.progress;
      const mean = shares.reduce((sum, each) => sum + each, 0) / workers;
      setState({ progress: Math.max(getState().progress, SEARCH_SHARE * mean) });
    }
  }

  /** Looks for better points; what was looked for before is dropped, and an answer on trial stays on the bench. */
  function look(plan: Plan): void {
    const { model } = documentStore.getState();
    if (services.length === 0) {
      services = senders.map((_, i) => start((answer) => take(i, answer)));
    }
    trials.letGo();
    number += 1;
    shares.fill(0);
    found = [];
    setState({ stage: 'running', progress: 0, plan, model, found: null });
    services.forEach((service, first) => {
      const sender = senders[first]!;
      sender.send(model, service.ask);
      const meshes = sender.keys(model);
      service.ask({ kind: 'search', number, model, plan, meshes, first, of: workers });
    });
  }

  function stop(): void {
    if (getState().stage !== 'running') return;
    for (const service of services) service.ask({ kind: 'cancel' });
    setState({ stage: 'idle', plan: null, model: null });
  }

  /** Puts an answer on the bench, the design before it held as the ghost. */
  function tryOn(answer: Answer): boolean {
    return trials.tryOn(answer, getState().model, answer.model);
  }

  /** Leaves the answer on the bench; nothing is asked for any more. */
  function keep(): void {
    if (trials.getState().trial === null) return;
    trials.keep();
    setState({ stage: 'idle', plan: null, model: null, found: null });
  }

  return { ...store, trials, look, stop, tryOn, takeBack: trials.takeBack, keep };
}
