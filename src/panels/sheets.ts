/** Which of the page's sheets over the bench is open. */
import { createStore } from 'zustand/vanilla';

export type SheetName = 'help' | 'cautions' | 'fitment' | 'papers';

export const sheets = createStore<{ readonly open: SheetName | null }>(() => ({ open: null }));

export function openSheet(open: SheetName): void {
  sheets.setState({ open });
}
