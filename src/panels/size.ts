/** The sizes the page is laid out for, by the window's width and height in CSS pixels. */
import { useSyncExternalStore } from 'react';

/**
 * `short`: a sheet beside the stage; `phone`: a sheet under it; `tight`: a work sheet takes the map's place too; `middle` and `wide` differ in what stands in
 * the top strip; in a `vast` window readings and a work sheet stand side by side.
 */
export type PageSize = 'short' | 'phone' | 'tight' | 'middle' | 'wide' | 'vast';

/** The first that matches. The first two stand in the style sheets too. */
const QUERIES = {
  short:
    '(orientation: landscape) and (max-height: 579px), (orientation: landscape) and (max-width: 899px), (orientation: landscape) and (max-width: 1199px) and (max-height: 679px)',
  phone: '(max-width: 899px)',
  tight: '(max-width: 1229px)',
  vast: '(min-width: 1640px)',
  wide: '(min-width: 1360px)',
} as const;

const lists = Object.entries(QUERIES).map(([size, query]) => ({
  size: size as keyof typeof QUERIES,
  list: matchMedia(query),
}));

function subscribe(listener: () => void): () => void {
  for (const { list } of lists) list.addEventListener('change', listener);
  return () => {
    for (const { list } of lists) list.removeEventListener('change', listener);
  };
}

function now(): PageSize {
  return lists.find(({ list }) => list.matches)?.size ?? 'middle';
}

/** True where the panels lie behind the tabs of one sheet. */
export function hasSheet(size: PageSize): size is 'short' | 'phone' {
  return size === 'short' || size === 'phone';
}

export function usePageSize(): PageSize {
  return useSyncExternalStore(subscribe, now);
}
