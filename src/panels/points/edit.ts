/** Edits of the points drawer: taken by the document, or refused in its words beside the field. */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { refusalWords } from '../../words/refusal.ts';

/** The last refusal that is shown beside the field it belongs to, so that it need not be shown again below. */
export const besideField = createStore<{ readonly text: string | null }>(() => ({ text: null }));

/** Edits the document; answers null, or why it was refused. With `path`, in the words of the field that stands there. */
export function editModel(change: (model: Model) => Model, path?: string): string | null {
  if (documentStore.edit(change)) return null;
  const { refusal } = documentStore.getState();
  besideField.setState({ text: refusal });
  return refusal === null || path === undefined ? refusal : refusalWords(refusal, path);
}
