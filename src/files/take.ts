/** Takes files a person offers: a model into the document, shapes to where meshes go; says in words what was not taken. */
import { isShapeName } from '../mesh/names.ts';
import type { DocumentStore } from '../state/document.ts';
import type { Notices } from '../state/notices.ts';
import { type OpenedFile, type Opening, openModelFile } from './open.ts';

const KEY = 'file';

export interface Taker {
  /** Takes the first of these files that is a model, and then every mesh. */
  files(files: Iterable<OpenedFile>): Promise<void>;
  /** Takes a model that comes from elsewhere. */
  opening(promise: Promise<Opening>): Promise<void>;
}

/** `openMeshes` takes files that are shapes. */
export function createTaker(
  documentStore: DocumentStore,
  notices: Notices,
  openMeshes: (files: readonly OpenedFile[]) => Promise<void>,
): Taker {
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
    const all = [...list];
    const shapes = all.filter(({ name }) => isShapeName(name));
    const [first, ...others] = all.filter((file) => !shapes.includes(file));
    if (first !== undefined) {
      const aside =
        others.length === 0
          ? ''
          : ` One model at a time: of ${others.length + 1} only the first, ${first.name}, was looked at.`;
      await opening(openModelFile(first), aside);
    }
    if (shapes.length > 0) await openMeshes(shapes);
  }

  return { files, opening: (promise) => opening(promise) };
}
