/** The one door into a model: text or parsed JSON in, a sound model or a named error out. Never throws, whatever it is given. */
import type { Model } from './model.ts';
import { type ModelError, Refusal, WHOLE_FILE } from './read/failure.ts';
import { readJson } from './read/json.ts';
import { keyed, own, refuse } from './read/reader.ts';
import { format, model as modelTable } from './read/table.ts';
import { checkBodies } from './sound/bodies.ts';
import { checkNames } from './sound/names.ts';
import { checkTyre } from './sound/tyre.ts';

export { formatModelError, type ModelError } from './read/failure.ts';

export type ModelResult =
  | { readonly ok: true; readonly model: Model }
  | { readonly ok: false; readonly error: ModelError };

/** The outcome of a reading; whatever is no refusal is a defect of this program and goes on. */
function answer(file: string, reading: () => Model): ModelResult {
  try {
    return { ok: true, model: reading() };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    const { path, found, wanted } = thrown;
    return { ok: false, error: { file, path, found, wanted } };
  }
}

/** The format comes first: of a file of another version nothing else can be said. */
function read(value: unknown): Model {
  const given = keyed(value, WHOLE_FILE, modelTable.wanted);
  const stated = own(given, 'format');
  if (stated === undefined) refuse('format', 'nothing', format.wanted);
  format.read(stated, 'format');
  const model = modelTable.read(value, '');
  checkBodies(model);
  checkTyre(model);
  checkNames(model);
  return model;
}

/**
 * A model from already parsed JSON, copied: keys in the format's order, nothing shared with `value`, minus zero read as zero. The error
 * is the first in a fixed order: format; then part by part in the format's order its unknown keys, its missing keys, the types and
 * ranges of its values; then whether the points make bodies, the tyre fits its wheel, and names mean something.
 */
export function readModel(value: unknown, file: string): ModelResult {
  return answer(file, () => read(value));
}

/** A model from the text of a file, as `readModel`; faults of the JSON itself come before everything else. */
export function parseModel(text: string, file: string): ModelResult {
  return answer(file, () => read(readJson(text)));
}
