/** The three sizes the page is laid out for, by the width of the window. */
import { useSyncExternalStore } from 'react';

export type PageSize = 'phone' | 'middle' | 'wide';

/** The same widths stand in the panels' style sheets. */
const PHONE = '(max-width: 719px)';
const WIDE = '(min-width: 1360px)';

const phone = matchMedia(PHONE);
const wide = matchMedia(WIDE);

function subscribe(listener: () => void): () => void {
  phone.addEventListener('change', listener);
  wide.addEventListener('change', listener);
  return () => {
    phone.removeEventListener('change', listener);
    wide.removeEventListener('change', listener);
  };
}

function now(): PageSize {
  if (phone.matches) return 'phone';
  return wide.matches ? 'wide' : 'middle';
}

export function usePageSize(): PageSize {
  return useSyncExternalStore(subscribe, now);
}
