/** A record that cannot be read is put where nothing overwrites it, and said so. */
import type { Notices } from './notices.ts';
import type { Archive, Shelf } from './shelf.ts';

export interface AsideParts {
  readonly notices: Notices;
  readonly shelf: Shelf;
  /** Where it goes if the shelf has no room for it. */
  readonly archive: Pick<Archive, 'write'>;
  readonly now: () => number;
  /** Hands a text to the person as a file. */
  readonly saveText: (text: string, fileName: string) => void;
}

export interface Damaged {
  /** The record as it was found. */
  readonly text: string;
  /** It goes under this and the time. */
  readonly key: string;
  /** Key of what is said, and the words. */
  readonly notice: string;
  readonly words: string;
  readonly fileName: string;
}

export function setAside(
  { shelf, archive, notices, now, saveText }: AsideParts,
  { text, key, notice, words, fileName }: Damaged,
): void {
  const place = `${key}.${now()}`;
  if (!shelf.write(place, text)) void archive.write(place, text);
  notices.say({
    key: notice,
    kind: 'alert',
    text: words,
    action: { label: 'Save what was kept as a file', run: () => saveText(text, fileName) },
  });
}
