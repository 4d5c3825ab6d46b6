/** Which of the page's sheets of text is open. */
import { createStore } from 'zustand/vanilla';

export type SheetName = 'help' | 'cautions';

export const sheets = createStore<{ readonly open: SheetName | null }>(() => ({ open: null }));

export function openSheet(open: SheetName): void {
  sheets.setState({ open });
}
