/**
 * Designs kept beside the present one, to be compared with it: up to four in all, the present one and yesterday's among
 * them. A design is called what its model is called, so that its name goes with it onto the bench and into a file.
 */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import type { DocumentState, DocumentStore } from './document.ts';
import { type Mark, PLACE_MARKS, PLACES, type Place, YESTERDAY_MARK } from './marks.ts';

/** Most designs that are compared at once, the present one counted. */
export const MOST_DESIGNS = 4;

export interface KeptDesign {
  readonly place: Place;
  readonly model: Model;
  /** The file, or shipped model, it came from. */
  readonly origin: string;
  /** Whether curves, scene and table show it. */
  readonly isShown: boolean;
}

/** A design beside the present one, as curves, scene and table take it. */
export interface BesideDesign {
  readonly key: 'yesterday' | Place;
  readonly name: string;
  readonly model: Model;
  readonly mark: Mark;
}

/** The two models a place and the bench have exchanged. */
interface Exchange {
  readonly place: Place;
  readonly models: readonly [Model, Model];
}

export interface DesignsState {
  /** In the order of their places. */
  readonly kept: readonly KeptDesign[];
  /** Keeps a model under a name; false when all places are taken. */
  readonly add: (name: string, model: Model, origin?: string) => boolean;
  /** Takes a design away; what it was, for `putBack`. */
  readonly remove: (place: Place) => KeptDesign | null;
  /** Puts a design where it was, or in the first free place; false when there is none. */
  readonly putBack: (design: KeptDesign) => boolean;
  readonly rename: (place: Place, name: string) => void;
  readonly show: (place: Place, isShown: boolean) => void;
  /** Exchanges a design with the present one. One step of the document's history: undo exchanges them again. */
  readonly workOn: (place: Place) => void;
  /** Makes yesterday's design one of those with a name; false when all places are taken. */
  readonly keepYesterday: (name: string) => boolean;
}

export type Designs = ReturnType<typeof createDesigns>;

function inOrder(kept: readonly KeptDesign[]): readonly KeptDesign[] {
  return PLACES.flatMap((place) => kept.filter((design) => design.place === place));
}

/** The first place that nothing is kept in. */
function freePlace(kept: readonly KeptDesign[]): Place | undefined {
  return PLACES.find((place) => kept.every((design) => design.place !== place));
}

function named(model: Model, name: string): Model {
  return model.name === name ? model : { ...model, name };
}

/**
 * The designs shown beside the present one, yesterday's first. Holding a design as yesterday's always works: with three
 * others shown, the last of them waits until it is let go of.
 */
export function designsBeside(
  kept: readonly KeptDesign[],
  held: Model | null,
): readonly BesideDesign[] {
  const shown = kept.filter(({ isShown }) => isShown);
  const others = shown.map(({ place, model }): BesideDesign => {
    return { key: place, name: model.name || 'without a name', model, mark: PLACE_MARKS[place] };
  });
  const yesterday: readonly BesideDesign[] =
    held === null
      ? []
      : [{ key: 'yesterday', name: 'yesterday', model: held, mark: YESTERDAY_MARK }];
  return [...yesterday, ...others].slice(0, MOST_DESIGNS - 1);
}

/** Follows a model that undo or redo brings back to the bench in exchange for the one that stood there. */
function exchanged(
  kept: readonly KeptDesign[],
  exchanges: readonly Exchange[],
  now: Model,
  before: Model,
): readonly KeptDesign[] {
  const isPair = ({ models: [one, other] }: Exchange): boolean =>
    (one === now && other === before) || (one === before && other === now);
  const found = exchanges.find(
    (exchange) =>
      isPair(exchange) &&
      kept.some(({ place, model }) => place === exchange.place && model === now),
  );
  if (found === undefined) return kept;
  return kept.map((design) =>
    design.place === found.place ? { ...design, model: before } : design,
  );
}

export function createDesigns(documentStore: DocumentStore) {
  let exchanges: readonly Exchange[] = [];

  /** Places that are taken, the present design's among them. */
  function taken(kept: readonly KeptDesign[]): number {
    return kept.length + (documentStore.getState().held === null ? 1 : 2);
  }

  const store = createStore<DesignsState>((setState, getState) => {
    const of = (place: Place) => getState().kept.find((design) => design.place === place) ?? null;
    const change = (place: Place, part: Partial<KeptDesign>): void =>
      setState(({ kept }) => ({
        kept: kept.map((design) => (design.place === place ? { ...design, ...part } : design)),
      }));
    const put = (design: Omit<KeptDesign, 'place'>, wanted?: Place): void =>
      setState(({ kept }) => {
        const place = kept.every((other) => other.place !== wanted) ? wanted : undefined;
        const free = place ?? freePlace(kept);
        return free === undefined ? {} : { kept: inOrder([...kept, { ...design, place: free }]) };
      });
    const hasRoom = (): boolean => taken(getState().kept) < MOST_DESIGNS;

    return {
      kept: [],
      add(name, model, origin = documentStore.getState().origin) {
        if (!hasRoom()) return false;
        put({ model: named(model, name), origin, isShown: true });
        return true;
      },
      remove(place) {
        const design = of(place);
        setState(({ kept }) => ({ kept: kept.filter((other) => other !== design) }));
        return design;
      },
      putBack(design) {
        if (!hasRoom()) return false;
        put(design, design.place);
        return true;
      },
      rename(place, name) {
        const design = of(place);
        if (design !== null) change(place, { model: named(design.model, name) });
      },
      show(place, isShown) {
        change(place, { isShown });
      },
      workOn(place) {
        const design = of(place);
        if (design === null) return;
        documentStore.endGesture();
        const { model, origin } = documentStore.getState();
        exchanges = [...exchanges, { place, models: [model, design.model] }];
        documentStore.load(design.model, design.origin);
        change(place, { model, origin });
      },
      keepYesterday(name) {
        const { held } = documentStore.getState();
        if (held === null || getState().kept.length === PLACES.length) return false;
        documentStore.release();
        return getState().add(name, held);
      },
    };
  });

  documentStore.subscribe((state: DocumentState, before: DocumentState) => {
    if (state.model === before.model || exchanges.length === 0) return;
    const { kept } = store.getState();
    const next = exchanged(kept, exchanges, state.model, before.model);
    if (next !== kept) store.setState({ kept: next });
  });

  return store;
}
