/**
 * The work sheets: larger pieces of work that lie in the dock at the page's right side, and behind a tab on a phone. One
 * line adds a sheet, and its program is loaded when it is first opened:
 *
 *     { key: 'name', label: 'Name', title: 'Its whole name', icon: 'M2 8h12', load: () => import('./name/NameSheet.tsx') },
 *
 * The module's default export is the sheet's body, which takes no props: title, closing, scrolling and width are the
 * frame's (WorkSheet.tsx). The body lies in the CSS container `work`, so that it can lay itself out by the width it is
 * given: `@container work (max-width: 420px)`.
 */
import type { ComponentType } from 'react';

export interface WorkSheet {
  /** How it is kept and found: `view.openWork(key)` opens it. */
  readonly key: string;
  /** The tab: one short word, of at most ten letters. */
  readonly label: string;
  /** The heading over the body. */
  readonly title: string;
  /** Strokes of the tab's drawing, 16 units square. */
  readonly icon: string;
  readonly load: () => Promise<{ readonly default: ComponentType }>;
}

/** In the order of their tabs. */
export const WORK_SHEETS: readonly WorkSheet[] = [];

/** The sheet of that key, if there is (still) one. */
export function workSheet(key: string | null): WorkSheet | undefined {
  return WORK_SHEETS.find((sheet) => sheet.key === key);
}
