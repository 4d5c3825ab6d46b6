/** How the bench is looked at: views, layers, panels, units, theme. Slow state; React may render from it. */
import { createStore } from 'zustand/vanilla';
import type { LengthUnit } from '../words/lengthUnit.ts';

export type { LengthUnit };

export type Viewpoint = 'threeQuarter' | 'front' | 'side' | 'above' | 'alongRod';
export type Shell = 'solid' | 'ghost' | 'cut';
export type Theme = 'light' | 'dark';
export type Panel = 'readings' | 'map' | 'points';

/** Drawings that can be switched on in the scene. */
export const LAYERS = [
  'steeringAxis',
  'contactPatch',
  'wheelPath',
  'ballJointArcs',
  'instantCentres',
  'rollCentre',
  'jointCones',
  'sweptSpace',
  'handles',
  'grid',
] as const;
export type Layer = (typeof LAYERS)[number];

/** What is opened over the stage for a while, and put away by Escape. */
export type Closable = 'work' | 'points';

export interface Insets {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

export interface ViewState {
  readonly viewpoint: Viewpoint;
  /** Counts requests for the viewpoint, so that asking twice moves the camera back twice. */
  readonly viewpointAsked: number;
  readonly wheelShell: Shell;
  readonly layers: Readonly<Record<Layer, boolean>>;
  readonly panels: Readonly<Record<Panel, boolean>>;
  /** Key of the work sheet that lies open in the dock, or null; panels/workSheets.ts knows them. */
  readonly work: string | null;
  /** True while the work sheet is given its greater width. */
  readonly isWorkWide: boolean;
  /** Of what Escape may put away, opened last first. */
  readonly opened: readonly Closable[];
  readonly unit: LengthUnit;
  readonly theme: Theme;
  /** What the panels cover of each edge of the window, px: the stage centres the corner in the rest. */
  readonly insets: Insets;
  /** The measure whose drawing is lit in the scene (its name is hovered or tapped), or null. */
  readonly lit: string | null;
  /** Path of the hard point whose handle was last taken in the scene, or null. */
  readonly touched: string | null;
}

function systemTheme(): Theme {
  const dark = globalThis.matchMedia?.('(prefers-color-scheme: dark)').matches ?? false;
  return dark ? 'dark' : 'light';
}

export type View = ReturnType<typeof createView>;

export function createView() {
  const store = createStore<ViewState>(() => ({
    viewpoint: 'threeQuarter',
    viewpointAsked: 0,
    wheelShell: 'solid',
    layers: {
      steeringAxis: false,
      contactPatch: false,
      wheelPath: false,
      ballJointArcs: false,
      instantCentres: false,
      rollCentre: false,
      jointCones: false,
      sweptSpace: false,
      handles: false,
      grid: true,
    },
    panels: { readings: true, map: true, points: false },
    work: null,
    isWorkWide: false,
    opened: [],
    unit: 'mm',
    theme: systemTheme(),
    insets: { top: 0, right: 0, bottom: 0, left: 0 },
    lit: null,
    touched: null,
  }));
  const { getState, setState } = store;

  function look(viewpoint: Viewpoint): void {
    setState({ viewpoint, viewpointAsked: getState().viewpointAsked + 1 });
  }

  function toggleLayer(layer: Layer): void {
    const { layers } = getState();
    setState({ layers: { ...layers, [layer]: !layers[layer] } });
  }

  /** `opened` with one more in front, or without it. */
  function openedWith(what: Closable, isOpen: boolean): readonly Closable[] {
    const others = getState().opened.filter((other) => other !== what);
    return isOpen ? [what, ...others] : others;
  }

  function togglePanel(panel: Panel): void {
    const { panels, opened } = getState();
    setState({
      panels: { ...panels, [panel]: !panels[panel] },
      opened: panel === 'points' ? openedWith('points', !panels.points) : opened,
    });
  }

  /** Opens a work sheet in the dock; null puts away the one that is open. */
  function openWork(work: string | null): void {
    setState({ work, opened: openedWith('work', work !== null) });
  }

  /** Gives the work sheet its greater width or takes it back; Escape then puts the sheet away first. */
  function widenWork(isWorkWide: boolean): void {
    setState({ isWorkWide, opened: openedWith('work', true) });
  }

  /** Puts away what was opened last; false where nothing is open. */
  function closeLast(): boolean {
    const { panels, work, opened } = getState();
    const isOpen = { work: work !== null, points: panels.points };
    const last = [...opened, 'work' as const, 'points' as const].find((what) => isOpen[what]);
    if (last === undefined) return false;
    if (last === 'work') openWork(null);
    else togglePanel('points');
    return true;
  }

  function light(key: string | null): void {
    if (getState().lit !== key) setState({ lit: key });
  }

  return { ...store, look, toggleLayer, togglePanel, openWork, widenWork, closeLast, light };
}
