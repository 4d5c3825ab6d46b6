/** Takes a design that comes by link into the document: as one step that undo takes back, and never over work that is kept nowhere else unasked. */
import type { Model } from '../../solver/index.ts';
import { type DocumentStore, sameModel } from '../state/document.ts';
import type { Notices } from '../state/notices.ts';
import { isLink, openLink } from './link.ts';

/** The key of whatever is said of a link. */
export const LINK_NOTICE = 'link';

/** Longest name that a notice repeats, characters. */
const LONGEST_NAME = 80;

export interface LinkParts {
  readonly documentStore: DocumentStore;
  readonly notices: Notices;
  /** Whether the present work is kept elsewhere too; asked once it is known what the link holds. */
  readonly isKept: () => Promise<boolean>;
}

export interface LinkTaker {
  /** Takes what an address' fragment brings; nothing happens when that is no design. `onTaken` is called once it is on the bench. */
  arrive(fragment: string, onTaken: () => void): Promise<void>;
  /** Takes a link that a person pasted here and now, which is answer enough. Null, or why it was not opened. */
  take(fragment: string): Promise<string | null>;
}

/** A name as it may stand in a sentence: on one line, and without signs that turn the writing about. */
export function shownName(name: string): string {
  const letters = [...name.replace(/[\p{C}\s]+/gu, ' ').trim()];
  if (letters.length === 0) return 'A design without a name';
  const cut = letters.length > LONGEST_NAME ? '…' : '';
  return `“${letters.slice(0, LONGEST_NAME).join('')}${cut}”`;
}

/** A link names meshes and holds none. */
function meshWords(model: Model): string {
  const files = new Set((model.obstacles ?? []).flatMap((one) => ('file' in one ? one.file : [])));
  return files.size === 0
    ? ''
    : ` It names ${files.size} mesh file${files.size > 1 ? 's' : ''}, which no link carries.`;
}

export function createLinkTaker({ documentStore, notices, isKept }: LinkParts): LinkTaker {
  // Two links may be read at once: only the one asked for last may change the bench.
  let asked = 0;

  function load(model: Model, origin: string): void {
    const name = shownName(model.name);
    if (sameModel(model, documentStore.getState().model)) {
      const text = `${name}, which the link brings, is what lies on the bench already.`;
      notices.say({ key: LINK_NOTICE, kind: 'status', text });
      return;
    }
    documentStore.load(model, origin);
    const text = `${name} was opened from a link. Undo brings back what was there.${meshWords(model)}`;
    notices.say({ key: LINK_NOTICE, kind: 'status', text });
  }

  async function arrive(fragment: string, onTaken: () => void): Promise<void> {
    if (!isLink(fragment)) return;
    asked += 1;
    const turn = asked;
    const opened = await openLink(fragment);
    const mayLoad =
      opened.ok && (sameModel(opened.model, documentStore.getState().model) || (await isKept()));
    if (turn !== asked) return;
    if (!opened.ok) {
      notices.say({ key: LINK_NOTICE, kind: 'alert', text: opened.message });
      return;
    }
    const run = (): void => {
      load(opened.model, opened.origin);
      onTaken();
    };
    if (mayLoad) return run();
    notices.say({
      key: LINK_NOTICE,
      kind: 'alert',
      text: `A link brings ${shownName(opened.model.name)}. The work on the bench is saved nowhere else: opening the link takes its place, and undo brings it back.`,
      action: { label: 'Open the link', run },
    });
  }

  async function take(fragment: string): Promise<string | null> {
    asked += 1;
    const turn = asked;
    const opened = await openLink(fragment);
    if (turn !== asked) return null;
    if (!opened.ok) return opened.message;
    load(opened.model, opened.origin);
    return null;
  }

  return { arrive, take };
}
