/** Takes files a person offers into the document, and says in words what was not taken. */
import type { DocumentStore } from '../state/document.ts';
import type { Notices } from '../state/notices.ts';
import { type OpenedFile, type Opening, openModelFile } from './open.ts';

const KEY = 'file';

export interface Taker {
  /** Takes the first of these files. */
  files(files: Iterable<OpenedFile>): Promise<void>;
  /** Takes a model that comes from elsewhere. */
  opening(promise: Promise<Opening>): Promise<void>;
}

export function createTaker(documentStore: DocumentStore, notices: Notices): Taker {
  // Two openings may overlap: only the one asked for last may change the bench.
  let asked = 0;

  async function opening(promise: Promise<Opening>, aside = ''): Promise<void> {
    asked += 1;
    const turn = asked;
    const opened = await promise;
    if (turn !== asked) return;
    notices.dismiss(KEY);
    if (!opened.ok) {
      notices.say({ key: KEY, kind: 'alert', text: `${opened.message}${aside}` });
      return;
    }
    documentStore.load(opened.model, opened.origin);
    if (aside !== '') {
      notices.say({ key: KEY, kind: 'status', text: `${opened.origin} was opened.${aside}` });
    }
  }

  async function files(list: Iterable<OpenedFile>): Promise<void> {
    const [first, ...others] = list;
    if (first === undefined) return;
    const aside =
      others.length === 0
        ? ''
        : ` One file at a time: of ${others.length + 1} only the first, ${first.name}, was looked at.`;
    await opening(openModelFile(first), aside);
  }

  return { files, opening: (promise) => opening(promise) };
}
