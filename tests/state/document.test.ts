import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeModel } from '../../solver/index.ts';
import type { Model } from '../../solver/model/model.ts';
import { createDocument, type DocumentStore, MOST_HISTORY } from '../../src/state/document.ts';
import { FULL_MODEL } from '../support/full-model.ts';

/** What a person believes the document to be: a row of snapshots with a place in it. */
interface Snapshots {
  now: string;
  origin: string;
  before: { text: string; origin: string }[];
  after: { text: string; origin: string }[];
  held: string | null;
  /** Text at the start of the open drag. */
  mark: string | null;
  refused: boolean;
}

const NAMED: readonly Model[] = ['a', 'b', 'c'].map((name) => ({ ...FULL_MODEL, name }));
const textOf = (model: Model | null) => (model === null ? null : writeModel(model));

function offset(value: number): (model: Model) => Model {
  return (model) => ({ ...model, wheel: { ...model.wheel, offset: value } });
}

const unsound = (model: Model): Model => ({ ...model, wheel: { ...model.wheel, width: -1 } });

/** The text after an edit, made without the store. */
function edited(text: string, change: (model: Model) => Model): string {
  return writeModel(change(JSON.parse(text) as Model));
}

function remember(snapshots: Snapshots, text: string): void {
  snapshots.before.push({ text, origin: snapshots.origin });
  if (snapshots.before.length > MOST_HISTORY) snapshots.before.shift();
  snapshots.after = [];
}

function endDrag(snapshots: Snapshots): void {
  if (snapshots.mark === null) return;
  if (snapshots.mark !== snapshots.now) remember(snapshots, snapshots.mark);
  snapshots.mark = null;
  snapshots.refused = false;
}

function compare(snapshots: Snapshots, store: DocumentStore): void {
  const state = store.getState();
  const entries = (list: typeof state.past) =>
    list.map(({ model, origin }) => ({ text: writeModel(model), origin }));
  expect({
    now: textOf(state.model),
    origin: state.origin,
    before: entries(state.past),
    after: entries(state.future),
    held: textOf(state.held),
    mark: textOf(state.mark),
    refused: state.refusal !== null,
  }).toEqual(snapshots);
}

class Step implements fc.Command<Snapshots, DocumentStore> {
  readonly name: string;
  readonly believe: (snapshots: Snapshots) => void;
  readonly act: (store: DocumentStore) => void;

  constructor(
    name: string,
    believe: (snapshots: Snapshots) => void,
    act: (store: DocumentStore) => void,
  ) {
    this.name = name;
    this.believe = believe;
    this.act = act;
  }

  check(): boolean {
    return true;
  }

  run(snapshots: Snapshots, store: DocumentStore): void {
    this.believe(snapshots);
    this.act(store);
    compare(snapshots, store);
  }

  toString(): string {
    return this.name;
  }
}

function editStep(value: number): Step {
  return new Step(
    `edit ${value}`,
    (snapshots) => {
      const next = edited(snapshots.now, offset(value));
      snapshots.refused = false;
      if (next === snapshots.now) return;
      if (snapshots.mark === null) remember(snapshots, snapshots.now);
      snapshots.now = next;
    },
    (store) => expect(store.edit(offset(value))).toBe(true),
  );
}

function loadStep(model: Model, origin: string): Step {
  return new Step(
    `load ${model.name}`,
    (snapshots) => {
      endDrag(snapshots);
      remember(snapshots, snapshots.now);
      Object.assign(snapshots, { now: writeModel(model), origin, refused: false });
    },
    (store) => store.load(model, origin),
  );
}

const refusedStep = new Step(
  'refused edit',
  (snapshots) => {
    snapshots.refused = true;
  },
  (store) => expect(store.edit(unsound)).toBe(false),
);

const beginStep = new Step(
  'begin drag',
  (snapshots) => {
    snapshots.mark ??= snapshots.now;
  },
  (store) => store.beginGesture(),
);

const endStep = new Step('end drag', endDrag, (store) => store.endGesture());

const cancelStep = new Step(
  'cancel drag',
  (snapshots) => {
    if (snapshots.mark === null) return;
    Object.assign(snapshots, { now: snapshots.mark, mark: null, refused: false });
  },
  (store) => store.cancelGesture(),
);

const undoStep = new Step(
  'undo',
  (snapshots) => {
    endDrag(snapshots);
    const entry = snapshots.before.pop();
    if (entry === undefined) return;
    snapshots.after.push({ text: snapshots.now, origin: snapshots.origin });
    Object.assign(snapshots, { now: entry.text, origin: entry.origin, refused: false });
  },
  (store) => store.undo(),
);

const redoStep = new Step(
  'redo',
  (snapshots) => {
    endDrag(snapshots);
    const entry = snapshots.after.pop();
    if (entry === undefined) return;
    snapshots.before.push({ text: snapshots.now, origin: snapshots.origin });
    Object.assign(snapshots, { now: entry.text, origin: entry.origin, refused: false });
  },
  (store) => store.redo(),
);

const holdStep = new Step(
  'hold',
  (snapshots) => {
    snapshots.held = snapshots.now;
  },
  (store) => store.hold(),
);

const releaseStep = new Step(
  'release',
  (snapshots) => {
    snapshots.held = null;
  },
  (store) => store.release(),
);

const fixed = [
  refusedStep,
  beginStep,
  endStep,
  cancelStep,
  undoStep,
  redoStep,
  holdStep,
  releaseStep,
];

const commands = fc.commands(
  [
    // Few values, so that edits often change nothing and drags often come back.
    fc.integer({ min: -2, max: 2 }).map(editStep),
    fc.constantFrom(...NAMED).map((model) => loadStep(model, `${model.name}.json`)),
    ...fixed.map((step) => fc.constant(step)),
  ],
  { size: 'large', maxCommands: 60 },
);

function opened(): { snapshots: Snapshots; store: DocumentStore } {
  return {
    snapshots: {
      now: writeModel(FULL_MODEL),
      origin: 'full.json',
      before: [],
      after: [],
      held: null,
      mark: null,
      refused: false,
    },
    store: createDocument(FULL_MODEL, 'full.json'),
  };
}

describe('the document', () => {
  it('is a row of snapshots with a place in it, whatever is done to it', () => {
    fc.assert(
      fc.property(commands, (cmds) => {
        fc.modelRun(() => {
          const { snapshots, store } = opened();
          return { model: snapshots, real: store };
        }, cmds);
      }),
      { numRuns: 80 },
    );
  });

  it('keeps the newest entries of a long history, and undoes to the oldest of them', () => {
    const { store } = opened();
    for (let value = 1; value <= MOST_HISTORY + 20; value += 1) store.edit(offset(value));
    for (let count = 0; count < MOST_HISTORY + 5; count += 1) store.undo();
    expect(store.getState().model.wheel.offset).toBe(20);
    expect(store.getState().future).toHaveLength(MOST_HISTORY);
    for (let count = 0; count < MOST_HISTORY + 5; count += 1) store.redo();
    expect(store.getState().model.wheel.offset).toBe(MOST_HISTORY + 20);
    expect(store.getState().past).toHaveLength(MOST_HISTORY);
  });

  it('makes one entry of a drag of many steps, and says in words why a step was refused', () => {
    const { store } = opened();
    store.beginGesture();
    for (const value of [1, 2, 3]) store.edit(offset(value));
    expect(store.edit(unsound)).toBe(false);
    expect(store.getState().refusal).toBe(
      'full.json: wheel.width: found -1, wanted a number above 0 and below 1e5 (inch code)',
    );
    expect(store.getState().model.wheel.offset).toBe(3);
    store.endGesture();
    expect(store.getState().past).toHaveLength(1);
    store.undo();
    expect(store.getState().model).toEqual(FULL_MODEL);
  });

  it('puts back kept work with no more history than it may have', () => {
    const { store } = opened();
    const entry = { model: FULL_MODEL, origin: 'kept.json' };
    const many = Array.from({ length: MOST_HISTORY + 3 }, () => entry);
    store.beginGesture();
    store.restore({ ...entry, past: many, future: many, held: FULL_MODEL });
    const { past, future, mark, origin, held } = store.getState();
    expect([past.length, future.length, mark, origin]).toEqual([
      MOST_HISTORY,
      MOST_HISTORY,
      null,
      'kept.json',
    ]);
    expect(held).toBe(FULL_MODEL);
  });
});
