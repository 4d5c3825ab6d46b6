/** How the bench is looked at and where the corner stands, kept on the shelf. Whatever is damaged in it is simply not taken. */
import type { Inputs } from './inputs.ts';
import type { Shelf } from './shelf.ts';
import {
  LAYERS,
  type LengthUnit,
  type Panel,
  type Shell,
  type Theme,
  type View,
  type Viewpoint,
  type ViewState,
} from './view.ts';

export const VIEW_KEY = 'armscribe.view';
export const INPUTS_KEY = 'armscribe.inputs';

/** How long after a change of the inputs they are written, ms. */
const INPUTS_AFTER = 300;

const VIEWPOINTS: readonly Viewpoint[] = ['threeQuarter', 'front', 'side', 'above', 'alongRod'];
const SHELLS: readonly Shell[] = ['solid', 'ghost', 'cut'];
const UNITS: readonly LengthUnit[] = ['mm', 'inch', 'sixteenth'];
const THEMES: readonly Theme[] = ['light', 'dark'];
const PANELS: readonly Panel[] = ['readings', 'map', 'points'];

type Kept = Pick<
  ViewState,
  'viewpoint' | 'wheelShell' | 'layers' | 'panels' | 'work' | 'isWorkWide' | 'unit' | 'theme'
>;

function parsed(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '{}');
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

function oneOf<T extends string>(known: readonly T[], value: unknown, otherwise: T): T {
  return known.find((name) => name === value) ?? otherwise;
}

function switches<T extends string>(
  names: readonly T[],
  value: unknown,
  otherwise: Readonly<Record<T, boolean>>,
): Readonly<Record<T, boolean>> {
  const given = (typeof value === 'object' && value !== null ? value : {}) as Partial<
    Record<T, unknown>
  >;
  const entries = names.map((name): [T, boolean] => {
    const kept = given[name];
    return [name, typeof kept === 'boolean' ? kept : otherwise[name]];
  });
  return { ...otherwise, ...(Object.fromEntries(entries) as Record<T, boolean>) };
}

function keptOf(state: ViewState): Kept {
  const { viewpoint, wheelShell, layers, panels, work, isWorkWide, unit, theme } = state;
  return { viewpoint, wheelShell, layers, panels, work, isWorkWide, unit, theme };
}

/** Takes the kept view, and from then on writes it at every change. */
export function keepView(view: View, shelf: Shelf): void {
  const first = view.getState();
  const kept = parsed(shelf.read(VIEW_KEY));
  const { panels, layers } = first;
  view.setState({
    viewpoint: oneOf(VIEWPOINTS, kept['viewpoint'], first.viewpoint),
    wheelShell: oneOf(SHELLS, kept['wheelShell'], first.wheelShell),
    unit: oneOf(UNITS, kept['unit'], first.unit),
    theme: oneOf(THEMES, kept['theme'], first.theme),
    layers: switches(LAYERS, kept['layers'], layers),
    panels: switches(PANELS, kept['panels'], panels),
    work: typeof kept['work'] === 'string' ? kept['work'] : first.work,
    isWorkWide: kept['isWorkWide'] === true,
  });
  // A theme nobody chose goes on following the system.
  let isThemeChosen = kept['theme'] !== undefined;
  view.subscribe((state, before) => {
    const [now, then] = [keptOf(state), keptOf(before)];
    if ((Object.keys(now) as (keyof Kept)[]).every((key) => now[key] === then[key])) return;
    isThemeChosen ||= now.theme !== then.theme;
    const { theme, ...rest } = now;
    shelf.write(VIEW_KEY, JSON.stringify(isThemeChosen ? { ...rest, theme } : rest));
  });
}

/** Takes the kept travel and rack, as far as the present model reaches; answers what writes them at once. */
export function keepInputs(inputs: Inputs, shelf: Shelf): () => void {
  const { travel, rack } = parsed(shelf.read(INPUTS_KEY));
  if (typeof travel === 'number' && typeof rack === 'number') inputs.move(travel, rack);
  let timer: ReturnType<typeof setTimeout> | undefined;
  function flush(): void {
    if (timer === undefined) return;
    clearTimeout(timer);
    timer = undefined;
    const { travel: t, rack: r } = inputs.getState();
    shelf.write(INPUTS_KEY, JSON.stringify({ travel: t, rack: r }));
  }
  inputs.subscribe((state, before) => {
    if (state.travel === before.travel && state.rack === before.rack) return;
    // Not started anew at each change: a drag must not make and clear a timer per frame.
    timer ??= setTimeout(flush, INPUTS_AFTER);
  });
  return flush;
}
