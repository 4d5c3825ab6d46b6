/** What a model file is refused with: always the file, the path in it, what was found and what is wanted. */

export interface ModelError {
  readonly file: string;
  /** Such as `lowerArm.frontPivot[1]`, `line 3, column 5` or `(whole file)`. */
  readonly path: string;
  readonly found: string;
  readonly wanted: string;
}

/** The path of the model itself. */
export const WHOLE_FILE = '(whole file)';

/** Thrown inside the reader and caught at its one door, so that the first error ends the reading. */
export class Refusal extends Error {
  readonly path: string;
  readonly found: string;
  readonly wanted: string;

  constructor(path: string, found: string, wanted: string) {
    super(`${path}: found ${found}, wanted ${wanted}`);
    this.path = path;
    this.found = found;
    this.wanted = wanted;
  }
}

/** The error on one line, whatever the file's name holds. */
export function formatModelError(error: ModelError): string {
  return `${escaped(error.file)}: ${error.path}: found ${error.found}, wanted ${error.wanted}`;
}

/** Longest text quoted in a message, in characters. */
const LONGEST_QUOTE = 40;

// Controls, line separators, direction marks, the byte order mark and halves of a surrogate pair: none may reach a terminal.
const UNPRINTABLE =
  /[\p{Cc}\u2028\u2029\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/gu;

/** Text with whatever does not print shown as \uXXXX. */
export function escaped(text: string): string {
  return text.replace(
    UNPRINTABLE,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** Text in double quotes, cut when long, with whatever does not print escaped. */
export function quoted(text: string): string {
  const characters = [...text.slice(0, 2 * LONGEST_QUOTE + 2)];
  const isLong = characters.length > LONGEST_QUOTE;
  const shown = isLong ? `${characters.slice(0, LONGEST_QUOTE).join('')}…` : text;
  return escaped(JSON.stringify(shown));
}

/** What a value is, in the words of a message. */
export function described(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Array.isArray(value))
    return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  switch (typeof value) {
    case 'string':
      return `${quoted(value)} (text)`;
    case 'number':
      return Number.isFinite(value) ? String(value) : `${value} (not a finite number)`;
    case 'boolean':
      return String(value);
    case 'object':
      return 'an object';
    default:
      return `a ${typeof value}`;
  }
}

const PLAIN_KEY = /^[A-Za-z_$][\w$]*$/;

/** The path of a key inside the part at `path`; a key that is no plain word is quoted in brackets. */
export function keyPath(path: string, key: string): string {
  if (!PLAIN_KEY.test(key) || key.length > LONGEST_QUOTE) return `${path}[${quoted(key)}]`;
  return path === '' ? key : `${path}.${key}`;
}

/** The path of an item of the list at `path`. */
export function itemPath(path: string, index: number): string {
  return `${path}[${index}]`;
}
