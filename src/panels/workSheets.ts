/**
 * The work sheets: larger pieces of work, each behind a tab of the rail at the page's right side. One line adds a sheet,
 * and its program is loaded when it is first opened:
 *
 *     { key: 'name', label: 'Name', title: 'Its whole name', icon: 'M2 8h12', load: () => import('./name/NameSheet.tsx') },
 *
 * The module's default export is the sheet's body, which takes no props: title, closing, scrolling and width are the
 * frame's (WorkSheet.tsx). It lies in the dock, in the CSS container `work`, so that it can lay itself out by the width
 * it is given: `@container work (max-width: 460px)`. On a phone it is one more tab. A sheet that needs the whole window
 * says how it is opened instead: `open` in place of `load`.
 */
import type { ComponentType } from 'react';
import { openSheet } from './sheets.ts';

interface Entry {
  readonly key: string;
  /** The tab: one short word, of at most ten letters. */
  readonly label: string;
  /** The heading over the body. */
  readonly title: string;
  /** Strokes of the tab's drawing, 16 units square. */
  readonly icon: string;
}

/** Lies in the dock: `view.openWork(key)` opens it. */
export interface DockedSheet extends Entry {
  readonly load: () => Promise<{ readonly default: ComponentType }>;
}

/** Lies over the whole page. */
export interface LargeSheet extends Entry {
  readonly open: () => void;
}

/** In the order of their tabs. */
export const WORK_SHEETS: readonly (DockedSheet | LargeSheet)[] = [
  {
    key: 'clearance',
    label: 'Clearance',
    title: 'What touches: least gaps, proven',
    icon: 'M2.4 3v10M13.6 3v10M5 8h6M5 8l1.8-1.8M5 8l1.8 1.8M11 8 9.2 6.2M11 8l-1.8 1.8',
    load: () => import('./clearance/ClearanceSheet.tsx'),
  },
  {
    key: 'stops',
    label: 'Stops',
    title: 'What stops it first, and next',
    icon: 'M2.4 13.4h11.2M8 2.4v7.2M5.2 7 8 9.8 10.8 7M4.4 11.6h7.2',
    load: () => import('./stops/StopsSheet.tsx'),
  },
  {
    key: 'cycle',
    label: 'Cycle',
    title: 'Cycle: five heights by three locks',
    icon: 'M2.6 2.6h10.8v10.8H2.6ZM6.2 2.6v10.8M9.8 2.6v10.8M2.6 6.2h10.8M2.6 9.8h10.8',
    load: () => import('./cycle/CycleSheet.tsx'),
  },
  {
    key: 'swept',
    label: 'Sweep',
    title: 'The space the tyre sweeps',
    icon: 'M4.200 4.200h7.600v7.600H4.200ZM2 8c0-4 2-6 6-6s6 2 6 6-2 6-6 6-6-2-6-6Z',
    load: () => import('./swept/SweptSheet.tsx'),
  },
  {
    key: 'align',
    label: 'Align',
    title: 'Set it: camber, caster and toe',
    icon: 'M8 2.4a5.6 5.6 0 1 1 0 11.2A5.6 5.6 0 0 1 8 2.4ZM8 8l2.8-3.2M8 .8v1.6M2.8 8H1.2M14.8 8h-1.6',
    load: () => import('./align/AlignSheet.tsx'),
  },
  {
    key: 'moving',
    label: 'Move',
    title: 'Move one thing: what else moves?',
    icon: 'M8 2v12M2 8h12M8 2 6.2 3.8M8 2l1.8 1.8M8 14l-1.8-1.8M8 14l1.8-1.8M2 8l1.8-1.8M2 8l1.8 1.8M14 8l-1.8-1.8M14 8l-1.8 1.8',
    load: () => import('./moving/MovingSheet.tsx'),
  },
  {
    key: 'trust',
    label: 'Trust',
    title: 'Trust it: how good are the numbers?',
    icon: 'M8 2.4v7M4.5 5.9h7M4.5 12.8h7',
    load: () => import('./trust/TrustSheet.tsx'),
  },
  {
    key: 'fit',
    label: 'Fit',
    title: 'Fit the points to what was read',
    icon: 'M2.4 12.6C6 12 10 8 13.6 3.4M4 7.2v4M4 9.2h.1M8 6.4v5M8 8.9h.1M12 4.2v4M12 6.2h.1',
    load: () => import('./fit/FitSheet.tsx'),
  },
  {
    key: 'improve',
    label: 'Improve',
    title: 'Improve it: where the points should be',
    icon: 'M2.6 13.4 13 3M13 3H8.6M13 3v4.4M3.8 5.2a1.4 1.4 0 1 0 0 .1M11.8 11.8a1.4 1.4 0 1 0 0 .1',
    load: () => import('./improve/ImproveSheet.tsx'),
  },
  {
    key: 'where',
    label: 'Rod end',
    title: 'Where the tie rod end may go',
    icon: 'M2.400 2.400v11.200h11.200M6 9.400c0-2.600 1.800-4.800 4-4.800s3 2 2 4-6 4-6 .800ZM8.800 7.400v.100',
    load: () => import('./where/WhereSheet.tsx'),
  },
  {
    key: 'compare',
    label: 'Compare',
    title: 'Compare: up to four designs',
    icon: 'M2.4 12.6C5 12.6 6.5 3.4 13.6 3.4M2.4 9.4c4 0 5-2 11.2 1.6',
    load: () => import('./compare/CompareSheet.tsx'),
  },
  {
    key: 'drawings',
    label: 'Plans',
    title: 'Full-size drawings and cut list',
    icon: 'M2.4 12.6 8 3.4l5.6 9.2M2.4 12.6h11.2M5.4 10.2l5.2 0M2.4 14.6h11.2',
    load: () => import('./drawings/DrawingsSheet.tsx'),
  },
  {
    key: 'fitment',
    label: 'Fitment',
    title: 'Wheel and tyre: compare others with what is fitted',
    icon: 'M8 1.8a6.2 6.2 0 1 1 0 12.4A6.2 6.2 0 0 1 8 1.8ZM8 5.2a2.8 2.8 0 1 1 0 5.6 2.8 2.8 0 0 1 0-5.6ZM8 8v.1',
    open: () => openSheet('fitment'),
  },
  {
    key: 'papers',
    label: 'Papers',
    title: 'Papers for the shop',
    icon: 'M4 2h6l3 3v9H4ZM10 2v3h3M6 8h5M6 11h5',
    open: () => openSheet('papers'),
  },
];

export const DOCKED_SHEETS = WORK_SHEETS.filter((sheet) => 'load' in sheet);

/** The docked sheet of that key, if there is (still) one. */
export function workSheet(key: string | null): DockedSheet | undefined {
  return DOCKED_SHEETS.find((sheet) => sheet.key === key);
}
