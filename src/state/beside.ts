/**
 * The designs beside the present one at the present inputs: yesterday's and those kept. Each is assembled when it comes
 * and solved once a pose, when somebody asks; nothing is allocated per frame.
 */
import type { BesideDesign, Designs } from './designStore.ts';
import { designsBeside } from './designStore.ts';
import type { DocumentStore } from './document.ts';
import type { Inputs } from './inputs.ts';
import { makePosed, type Posed, type PosedStore, solveInto } from './posed.ts';

export interface BesidePosed extends BesideDesign {
  readonly posed: Posed;
}

export type BesideStore = ReturnType<typeof createBeside>;

export function createBeside(
  posed: PosedStore,
  documentStore: DocumentStore,
  inputs: Inputs,
  designs: Designs,
) {
  let list: readonly BesidePosed[] = [];
  let kept: unknown = null;
  let held: unknown = null;
  let solved = -1;

  function posedFor(design: BesideDesign): Posed {
    const known = list.find(({ key, model }) => key === design.key && model === design.model);
    return known?.posed ?? makePosed(design.model);
  }

  /** Assembles anew what has come; true when the list has changed. */
  function gather(): boolean {
    const yesterday = posed.held();
    const { kept: keptNow } = designs.getState();
    if (kept === keptNow && held === yesterday) return false;
    kept = keptNow;
    held = yesterday;
    list = designsBeside(keptNow, documentStore.getState().held).map((design) => ({
      ...design,
      posed: design.key === 'yesterday' && yesterday !== null ? yesterday : posedFor(design),
    }));
    return true;
  }

  return {
    /** The designs in the order people read them, solved; the same list until another design comes or one goes. */
    current(): readonly BesidePosed[] {
      const isNew = gather();
      if (!isNew && solved === posed.version()) return list;
      solved = posed.version();
      const { travel, rack } = inputs.getState();
      for (let i = 0; i < list.length; i += 1) {
        const { key, posed: one } = list[i]!;
        // Yesterday's is solved with the present one.
        if (key !== 'yesterday') solveInto(one, travel, rack);
      }
      return list;
    },
  };
}
