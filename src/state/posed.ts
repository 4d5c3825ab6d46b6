/**
 * The pose of the present model at the present inputs. A change of either only marks it stale; the first to ask in a
 * frame pays for one solve, everyone after reads the same buffers. Nothing here is allocated per frame.
 */

import { createRodGap, type RodGap, rodGapInto } from '../../solver/clearance/rodGap.ts';
import {
  assemble,
  type Corner,
  createMeasures,
  createPose,
  type Model,
  measureInto,
  type Pose,
  solve,
} from '../../solver/index.ts';
import type { DocumentStore } from './document.ts';
import type { Inputs } from './inputs.ts';

/** One design solved at the present inputs. */
export interface Posed {
  readonly corner: Corner;
  readonly pose: Pose;
  readonly measures: Float64Array;
  /** Tie rod against the wheel, and against the tyre. */
  readonly wheelGap: RodGap;
  readonly tyreGap: RodGap;
}

/** Makes a design ready to be solved. */
export function makePosed(model: Model): Posed {
  const corner = assemble(model);
  return {
    corner,
    pose: createPose(),
    measures: createMeasures(),
    wheelGap: createRodGap(corner, 'wheel'),
    tyreGap: createRodGap(corner, 'tyre'),
  };
}

/** Solves and measures a design, and its tie rod's gaps, at the inputs. */
export function solveInto(posed: Posed, travel: number, rack: number): void {
  solve(posed.corner, posed.pose, travel, rack);
  measureInto(posed.corner, posed.pose, posed.measures);
  rodGapInto(posed.wheelGap, posed.pose);
  rodGapInto(posed.tyreGap, posed.pose);
}

/** The model without its settings: cams, shims and turns at 0. */
export function withoutSettings(model: Model): Model {
  const centred = <T extends Model['lowerArm']>(arm: T): T => ({
    ...arm,
    ...(arm.frontCam === undefined ? {} : { frontCam: { ...arm.frontCam, angle: 0 } }),
    ...(arm.rearCam === undefined ? {} : { rearCam: { ...arm.rearCam, angle: 0 } }),
  });
  const { frontShim, rearShim } = model.upperArm;
  return {
    ...model,
    lowerArm: centred(model.lowerArm),
    upperArm: {
      ...centred(model.upperArm),
      ...(frontShim === undefined ? {} : { frontShim: { ...frontShim, thickness: 0 } }),
      ...(rearShim === undefined ? {} : { rearShim: { ...rearShim, thickness: 0 } }),
    },
    tieRod: { ...model.tieRod, ...(model.tieRod.turns === undefined ? {} : { turns: 0 }) },
  };
}

export type PosedStore = ReturnType<typeof createPosed>;

export function createPosed(documentStore: DocumentStore, inputs: Inputs) {
  const listeners = new Set<() => void>();
  let present = makePosed(documentStore.getState().model);
  let yesterday: Posed | null = null;
  let design = makeDesign(documentStore.getState().model);
  let version = 0;
  let solvedVersion = -1;
  let solves = 0;

  function makeDesign(model: Model): Float64Array {
    const posed = makePosed(withoutSettings(model));
    solve(posed.corner, posed.pose, 0, 0);
    measureInto(posed.corner, posed.pose, posed.measures);
    return posed.measures;
  }

  function markStale(): void {
    version += 1;
    for (const listener of listeners) listener();
  }

  /** Several edits may come before the next frame: only the last one is assembled. */
  function reassemble(): void {
    const { model, held } = documentStore.getState();
    if (present.corner.model !== model) {
      present = makePosed(model);
      design = makeDesign(model);
    }
    if (held !== (yesterday?.corner.model ?? null))
      yesterday = held === null ? null : makePosed(held);
  }

  function refresh(): void {
    if (solvedVersion === version) return;
    solvedVersion = version;
    solves += 1;
    reassemble();
    const { travel, rack } = inputs.getState();
    solveInto(present, travel, rack);
    if (yesterday !== null) solveInto(yesterday, travel, rack);
  }

  documentStore.subscribe((state, before) => {
    if (state.model !== before.model || state.held !== before.held) markStale();
  });
  inputs.subscribe((state, before) => {
    if (state.travel !== before.travel || state.rack !== before.rack) markStale();
  });

  return {
    /** The present design, solved. Its identity changes when the model does. */
    current(): Posed {
      refresh();
      return present;
    },
    /** The held design at the same inputs, or null. */
    held(): Posed | null {
      refresh();
      return yesterday;
    },
    /** Measures that differences are taken from: the held design's at the same inputs, else the design pose's. */
    baseline(): Float64Array {
      refresh();
      return yesterday?.measures ?? design;
    },
    /** Grows with every change; equal versions mean equal poses. */
    version(): number {
      return version;
    },
    /** How often a pose was solved: for the tests of the frame path. */
    solves(): number {
      return solves;
    },
    /** Calls `listener` when the pose went stale (not when it is solved); returns the way out. */
    subscribe(listener: () => void): () => void {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
