/** The three lists of what is to be improved, as they stand on the page: may move, wanted, must hold; and what is half typed. */
import { createStore } from 'zustand/vanilla';
import type { Holds, Mover, Plan, Stay, Wish } from '../../solver/improve/plan.ts';

/** One line of a list. */
export interface Row<T> {
  readonly id: number;
  readonly of: T;
}

/** What stands in a field that was not taken, and why not. */
export interface PlanDraft {
  readonly text: string;
  readonly message: string | null;
}

export interface PlanRows {
  readonly movers: readonly Row<Mover>[];
  readonly wishes: readonly Row<Wish>[];
  readonly stays: readonly Row<Stay>[];
  readonly holds: Omit<Holds, 'stays'>;
  /** By the row's id and the field's name: "3.from". */
  readonly drafts: Readonly<Record<string, PlanDraft>>;
}

export interface PlanState extends PlanRows {
  /** The lists before a ready-made start took their place. */
  readonly before: PlanRows | null;
}

export type PlanStore = ReturnType<typeof createImprovePlan>;

export const NO_ROWS: PlanRows = {
  movers: [],
  wishes: [],
  stays: [],
  holds: { limits: true, gaps: true, broken: false },
  drafts: {},
};

type List = 'movers' | 'wishes' | 'stays';

function without(drafts: PlanRows['drafts'], id: number): PlanRows['drafts'] {
  return Object.fromEntries(Object.entries(drafts).filter(([key]) => !key.startsWith(`${id}.`)));
}

function rowsOf({ movers, wishes, stays, holds, drafts }: PlanRows): PlanRows {
  return { movers, wishes, stays, holds, drafts };
}

export function createImprovePlan() {
  const store = createStore<PlanState>(() => ({ ...NO_ROWS, before: null }));
  const { getState, setState } = store;

  function nextId(): number {
    const { movers, wishes, stays, before } = getState();
    const all = [movers, wishes, stays, before?.movers, before?.wishes, before?.stays];
    return 1 + Math.max(0, ...all.flatMap((rows) => (rows ?? []).map(({ id }) => id)));
  }

  function add(list: List, of: Mover | Wish | Stay): void {
    const rows = getState()[list] as readonly Row<unknown>[];
    setState({ [list]: [...rows, { id: nextId(), of }] } as Partial<PlanState>);
  }

  function change<T extends object>(list: List, id: number, part: Partial<T>): void {
    const rows = getState()[list] as readonly Row<T>[];
    const changed = rows.map((row) => (row.id === id ? { id, of: { ...row.of, ...part } } : row));
    setState({ [list]: changed } as Partial<PlanState>);
  }

  return {
    ...store,
    addMover: (mover: Mover) => add('movers', mover),
    addWish: (wish: Wish) => add('wishes', wish),
    addStay: (stay: Stay) => add('stays', stay),
    changeMover: (id: number, part: Partial<Mover>) => change<Mover>('movers', id, part),
    changeWish: (id: number, part: Partial<Wish>) => change<Wish>('wishes', id, part),
    changeStay: (id: number, part: Partial<Stay>) => change<Stay>('stays', id, part),
    hold: (part: Partial<PlanRows['holds']>) =>
      setState(({ holds }) => ({ holds: { ...holds, ...part } })),

    remove(list: List, id: number): void {
      const state = getState();
      const rows = state[list] as readonly Row<unknown>[];
      const drafts = without(state.drafts, id);
      setState({ [list]: rows.filter((row) => row.id !== id), drafts } as Partial<PlanState>);
    },

    /** What is typed into a field; null when it was taken, or given up. */
    draft(key: string, draft: PlanDraft | null): void {
      const { [key]: _, ...others } = getState().drafts;
      setState({ drafts: draft === null ? others : { ...others, [key]: draft } });
    },

    /** Puts a plan in the place of the lists; `putBack` has them again. */
    take(plan: Plan): void {
      const state = getState();
      const isEmpty = state.movers.length + state.wishes.length + state.stays.length === 0;
      const before = isEmpty ? state.before : rowsOf(state);
      setState({ before });
      const first = nextId();
      const { stays, ...holds } = plan.holds;
      const all = [...plan.movers, ...plan.wishes, ...stays].map((of, i) => ({
        id: first + i,
        of,
      }));
      const [m, w] = [plan.movers.length, plan.wishes.length];
      setState({
        movers: all.slice(0, m) as readonly Row<Mover>[],
        wishes: all.slice(m, m + w) as readonly Row<Wish>[],
        stays: all.slice(m + w) as readonly Row<Stay>[],
        holds,
        drafts: {},
      });
    },

    putBack(): void {
      const { before } = getState();
      if (before !== null) setState({ ...before, before: null });
    },
  };
}

/** The lists as a plan. */
export function planOf({ movers, wishes, stays, holds }: PlanRows): Plan {
  return {
    movers: movers.map(({ of }) => of),
    wishes: wishes.map(({ of }) => of),
    holds: { ...holds, stays: stays.map(({ of }) => of) },
  };
}
