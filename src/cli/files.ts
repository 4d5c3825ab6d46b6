/** Model files from disk. */

import { readFileSync } from 'node:fs';
import {
  formatModelError,
  type Model,
  type ModelResult,
  parseModel,
  WHOLE_FILE,
} from '../../solver/index.ts';
import { BadInput } from './refusal.ts';

/** What stands in the way of reading, by the system's code. */
const OBSTRUCTIONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  EISDIR: 'a folder',
  ENOTDIR: 'a path through something that is no folder',
  EACCES: 'a file that may not be read',
  ENAMETOOLONG: 'a name too long for a file',
};

/** What stands in the way of a file, out of what reading it threw. */
export function obstruction(thrown: unknown): string {
  const code = (thrown as NodeJS.ErrnoException).code ?? '';
  return OBSTRUCTIONS[code] ?? `a file that cannot be read (${code || 'unknown'})`;
}

function unread(file: string, found: string): ModelResult {
  return { ok: false, error: { file, path: WHOLE_FILE, found, wanted: 'a model file' } };
}

/** Reads a model file; what cannot be read or is not UTF-8 is answered like any other fault of it. */
export function openModel(file: string): ModelResult {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch (thrown) {
    return unread(file, obstruction(thrown));
  }
  try {
    return parseModel(new TextDecoder('utf-8', { fatal: true }).decode(bytes), file);
  } catch (thrown) {
    if (thrown instanceof TypeError) return unread(file, 'bytes that are not UTF-8 text');
    throw thrown;
  }
}

/** The model in a file, or a refusal with its one line. */
export function loadModel(file: string): Model {
  const result = openModel(file);
  if (!result.ok) throw new BadInput(formatModelError(result.error));
  return result.model;
}
