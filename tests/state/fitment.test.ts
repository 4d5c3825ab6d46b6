import { beforeEach, describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { certify } from '../../solver/certify/proof.ts';
import { watchedPairs } from '../../solver/clearance/pairs.ts';
import { assemble, type Model } from '../../solver/index.ts';
import { createDocument, type DocumentStore } from '../../src/state/document.ts';
import { createFitment, type FitmentStore } from '../../src/state/fitment.ts';
import { createFittedGaps } from '../../src/state/fittedGaps.ts';
import { FITMENT_KEY, keepFitment } from '../../src/state/keepFitment.ts';
import { type MeshesState, meshKey } from '../../src/state/meshes.ts';
import type { Shelf } from '../../src/state/shelf.ts';
import type { FitmentAnswer, FitmentRequest } from '../../src/worker/fitmentJob.ts';
import { createFitmentRunner, fitmentPairs } from '../../src/worker/fitmentJob.ts';
import type { PreparedMesh } from '../../src/worker/meshJob.ts';
import { shipped } from '../support/models.ts';

const FACTORY = shipped('half-ton-factory');

let document: DocumentStore;
let fitment: FitmentStore;

beforeEach(() => {
  document = createDocument(FACTORY, 'test.json');
  fitment = createFitment(document);
});

/** A candidate with a spacer under the name A. */
function addSpaced(spacer = 20): void {
  fitment.add();
  const [slot] = fitment.getState().slots;
  fitment.take('A', { ...slot!.candidate, spacer }, []);
}

const model = (): Model => document.getState().model;

describe('candidates', () => {
  it('start as what is fitted, three at most, each with its own name', () => {
    expect([fitment.add(), fitment.add(), fitment.add(), fitment.add()]).toEqual([
      'A',
      'B',
      'C',
      null,
    ]);
    fitment.remove('B');
    expect(fitment.add()).toBe('B');
    expect(fitment.getState().slots.map(({ name }) => name)).toEqual(['A', 'B', 'C']);
    expect(fitment.getState().slots[0]?.candidate.tyre).toEqual({ size: '265/70R17' });
  });

  it('keep a draft until it is taken or given up, beside those of other fields', () => {
    fitment.add();
    fitment.draft('A', 'tyre', { text: '35x', message: 'no' });
    fitment.draft('A', 'spacer', { text: 'x', message: 'no number' });
    fitment.take('A', { ...fitment.getState().slots[0]!.candidate, spacer: 3 }, ['spacer']);
    expect(fitment.getState().slots[0]?.drafts).toEqual({ tyre: { text: '35x', message: 'no' } });
    fitment.draft('A', 'tyre', null);
    expect(fitment.getState().slots[0]?.drafts).toEqual({});
  });
});

describe('a trial', () => {
  it('holds what was there, is one entry of the history, and is taken back whole', () => {
    addSpaced();
    expect(fitment.tryOn('A')).toBe(true);
    expect(model().wheel.spacer).toBe(20);
    expect(document.getState().held).toBe(FACTORY);
    expect(document.getState().past).toHaveLength(1);
    expect(fitment.reference()).toBe(FACTORY);
    fitment.takeBack();
    expect(model()).toBe(FACTORY);
    expect(document.getState().held).toBeNull();
    expect(fitment.getState().trial).toBeNull();
  });

  it('ends with undo, and the design held before is held again', () => {
    const held = shipped('rear-steer-saloon');
    document.setState({ held });
    addSpaced();
    fitment.tryOn('A');
    expect(document.getState().held).toBe(FACTORY);
    document.undo();
    expect(fitment.getState().trial).toBeNull();
    expect(document.getState().held).toBe(held);
    expect(model()).toBe(FACTORY);
  });

  it('taken back after other edits leaves those', () => {
    addSpaced();
    fitment.tryOn('A');
    document.edit((now) => ({ ...now, name: 'renamed' }));
    fitment.takeBack();
    expect(model().name).toBe('renamed');
    expect(model().wheel).toEqual(FACTORY.wheel);
    expect(document.getState().held).toBeNull();
  });

  it('ends, with everything left as it is, when the ghost is let go of', () => {
    addSpaced();
    fitment.tryOn('A');
    document.release();
    expect(fitment.getState().trial).toBeNull();
    expect(model().wheel.spacer).toBe(20);
  });

  it('of another candidate starts from what was there before', () => {
    addSpaced();
    fitment.add();
    fitment.take('B', { ...fitment.getState().slots[1]!.candidate, spacer: 5 }, []);
    fitment.tryOn('A');
    fitment.tryOn('B');
    expect(fitment.getState().trial).toMatchObject({ name: 'B', before: FACTORY });
    expect(model().wheel.spacer).toBe(5);
    fitment.takeBack();
    expect(model()).toBe(FACTORY);
  });

  it('kept stays on the bench and lets the ghost go; undo still leads back', () => {
    addSpaced();
    fitment.tryOn('A');
    expect(fitment.keep('A')).toBe(true);
    expect(document.getState().held).toBeNull();
    expect(model().wheel.spacer).toBe(20);
    document.undo();
    expect(model()).toBe(FACTORY);
  });

  it('is none for a candidate that is what is fitted, or that does not fit', () => {
    fitment.add();
    expect(fitment.tryOn('A')).toBe(false);
    fitment.take('A', { ...fitment.getState().slots[0]!.candidate, rimWidth: 0 }, []);
    expect(fitment.tryOn('A')).toBe(false);
    expect(fitment.keep('A')).toBe(false);
    expect(document.getState().past).toEqual([]);
  });
});

describe('gaps behind the page', () => {
  it('are proven pair by pair, the tie rod’s first; the newest request of a column wins', () => {
    let run: (() => void) | null = null;
    let time = 0;
    const answers: FitmentAnswer[] = [];
    const runner = createFitmentRunner(
      (answer) => answers.push(answer),
      (later) => {
        run = later;
      },
      () => {
        time += 1;
        return time;
      },
    );
    const ask = (number: number, column: string, of: Model): void =>
      runner.ask({ kind: 'column', number, column, model: of, meshes: new Map() });
    const other = { ...FACTORY, wheel: { ...FACTORY.wheel, spacer: 30 } };
    ask(1, 'A', FACTORY);
    ask(2, 'B', FACTORY);
    ask(3, 'A', other);
    runner.ask({ kind: 'leave', column: 'B' });
    for (let turns = 0; run !== null && turns < 100_000; turns += 1) {
      const next: () => void = run;
      run = null;
      next();
    }
    expect(new Set(answers.map(({ number }) => number))).toEqual(new Set([3]));
    const corner = assemble(other);
    const last = answers.at(-1);
    expect(last?.progress).toBe(1);
    const pairs = fitmentPairs(corner);
    expect(pairs.map(({ names }) => names.join('/')).slice(0, 2)).toEqual([
      'tieRod/wheel',
      'tieRod/tyre',
    ]);
    const isOfWheel = (name: string): boolean => name === 'wheel' || name === 'tyre';
    expect(pairs).toHaveLength(
      watchedPairs(corner).filter(({ names }) => names.some(isOfWheel)).length,
    );
    expect(last?.proven).toEqual(certify(corner, pairs));
  });

  it('are asked for once a model, and stale answers are not shown', () => {
    const asked: FitmentRequest[] = [];
    let tell: ((answer: FitmentAnswer) => void) | undefined;
    let started = 0;
    let stopped = 0;
    const meshes = createStore<MeshesState>(() => ({ files: new Map(), offered: [] }));
    const gaps = createFittedGaps(meshes, (answer) => {
      tell = answer;
      started += 1;
      return {
        ask: (request) => asked.push(request),
        stop: () => {
          stopped += 1;
        },
      };
    });
    const numbers = (): number[] =>
      asked.flatMap((request) => (request.kind === 'column' ? [request.number] : []));
    const answer = (number: number, progress: number): FitmentAnswer => ({
      number,
      column: 'A',
      proven: [],
      progress,
    });
    gaps.ask('A', FACTORY);
    gaps.ask('A', FACTORY);
    gaps.ask('A', { ...FACTORY });
    expect(numbers()).toEqual([1, 2]);
    tell?.(answer(1, 0));
    expect(gaps.getState().columns['A']?.answer).toBeNull();
    tell?.(answer(2, 0.3));
    expect(gaps.getState().columns['A']?.answer?.progress).toBe(0.3);
    // Stopped by hand, what came in stays; taken up again it is asked anew.
    gaps.halt();
    expect(gaps.getState().isStopped).toBe(true);
    expect(gaps.getState().columns['A']?.answer?.progress).toBe(0.3);
    gaps.goOn();
    expect([started, stopped]).toEqual([2, 1]);
    expect(numbers()).toEqual([1, 2, 3]);
    // A mesh that has come in changes the gaps: it is sent, and its column asked for again.
    const mesh = { name: 'scan', shape: 'mesh', file: 'scan.stl', unit: 'mm' } as const;
    const scanned: Model = { ...FACTORY, obstacles: [mesh] };
    gaps.ask('A', scanned);
    gaps.ask('A', scanned);
    expect(numbers()).toEqual([1, 2, 3, 4]);
    const ready = { state: 'ready', mesh: {} as PreparedMesh } as const;
    meshes.setState({ files: new Map([[meshKey(mesh), ready]]) });
    gaps.ask('A', scanned);
    gaps.ask('A', scanned);
    expect(numbers()).toEqual([1, 2, 3, 4, 5]);
    expect(asked.at(-2)).toMatchObject({ kind: 'mesh', key: meshKey(mesh) });
    expect(asked.at(-1)).toMatchObject({ meshes: new Map([['scan', meshKey(mesh)]]) });
    gaps.leave('A');
    expect(asked.at(-1)).toEqual({ kind: 'leave', column: 'A' });
    expect(gaps.getState().columns).toEqual({});
    gaps.stop();
    expect(stopped).toBe(2);
  });
});

describe('kept candidates', () => {
  function shelfOf(kept: Map<string, string>): Shelf {
    return {
      read: (key) => kept.get(key) ?? null,
      write: (key, text) => {
        kept.set(key, text);
        return true;
      },
      remove: (key) => kept.delete(key),
    };
  }

  it('are there again with what was half typed, at the next visit', () => {
    const kept = new Map<string, string>();
    keepFitment(fitment, shelfOf(kept));
    addSpaced(12);
    fitment.add({
      tyre: { diameter: 800, width: 260 },
      rimDiameter: 17,
      rimWidth: 9,
      mounting: { by: 'backspacing', value: 120 },
      spacer: 0,
      mass: 12,
      section: [
        [-100, 230],
        [100, 232],
      ],
    });
    fitment.draft('A', 'tyre', { text: '35x', message: 'no', nearest: '35x12.50R17' });
    fitment.setState({ bearing: 48 });
    const next = createFitment(document);
    keepFitment(next, shelfOf(kept));
    const [a, b] = fitment.getState().slots;
    expect(next.getState().slots).toEqual([
      { ...a, drafts: { tyre: { text: '35x', message: null } } },
      b,
    ]);
    expect(next.getState().bearing).toBe(48);
  });

  it.each([
    'not json',
    '[]',
    '{"slots":7,"bearing":"x"}',
    '{"slots":[{"name":"A"},{"name":"Z","candidate":{}},null]}',
    '{"slots":[{"name":"A","candidate":{"tyre":{"size":"x"},"rimDiameter":null,"rimWidth":8,"spacer":0,"mounting":{"by":"offset","value":1}}}]}',
  ])('that are damaged are not taken: %s', (text) => {
    const kept = new Map([[FITMENT_KEY, text]]);
    keepFitment(fitment, shelfOf(kept));
    expect(fitment.getState().slots).toEqual([]);
    expect(fitment.add()).toBe('A');
  });
});
