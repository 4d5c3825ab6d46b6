/** The sizes the page is laid out for, by the window's width and height in CSS pixels. */
import { useSyncExternalStore } from 'react';

/**
 * `phone`: a sheet under the stage, or beside it in a short window (App.css); `middle` and `wide` differ in what stands in
 * the top strip; in a `vast` window readings and a work sheet stand side by side.
 */
export type PageSize = 'phone' | 'middle' | 'wide' | 'vast';

/** The first two stand in the style sheets too: a narrow window, an upright one, and a short one. */
const QUERIES = {
  phone: '(max-width: 719px), (max-width: 899px) and (orientation: portrait), (max-height: 579px)',
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

export function usePageSize(): PageSize {
  return useSyncExternalStore(subscribe, now);
}
