/** Opens a file a person has chosen or dropped: a model, or words that say why not. */
import { formatModelError, type Model, parseModel } from '../../solver/index.ts';

/** A model file is a few kilobytes; far above that it is another kind of file, and slow to look through. */
export const LARGEST_FILE = 5_000_000;

/** What is needed of a File. */
export interface OpenedFile {
  readonly name: string;
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

export type Opening =
  | { readonly ok: true; readonly model: Model; readonly origin: string }
  | { readonly ok: false; readonly message: string };

function refused(message: string): Opening {
  return { ok: false, message };
}

/** The text of a file; null when it is none. */
function textOf(bytes: Uint8Array): string | null {
  if (bytes.includes(0)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Reads a model out of a file. Refusals are one sentence, the contract's message where the text was read. Never throws. */
export async function openModelFile(file: OpenedFile): Promise<Opening> {
  const { name, size } = file;
  if (size > LARGEST_FILE) {
    const megabytes = (size / 1e6).toFixed(1);
    return refused(
      `${name} is ${megabytes} MB. A model file is a few kilobytes; over 5 MB none is opened.`,
    );
  }
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return refused(`${name} could not be read. It may be a folder, or have been moved.`);
  }
  if (bytes.length === 0) return refused(`${name} is empty.`);
  const text = textOf(bytes);
  if (text === null) {
    return refused(`${name} is not a text file. A model file is JSON text in UTF-8.`);
  }
  if (text.trim() === '') return refused(`${name} is empty.`);
  const read = parseModel(text, name);
  if (!read.ok) return refused(formatModelError(read.error));
  return { ok: true, model: read.model, origin: name };
}
