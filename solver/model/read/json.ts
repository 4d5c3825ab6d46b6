/**
 * JSON text to a value, by RFC 8259. The language's own parser words its errors differently in each browser, keeps the last of two
 * equal keys in silence and treats deep nesting by luck; here every fault has its line and column, or its path.
 */
import { itemPath, keyPath, quoted, Refusal } from './failure.ts';

/** Deepest nesting read. A model needs 5 levels. */
const DEEPEST = 64;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const PLAIN_TEXT = /[^"\\\p{Cc}]+|[\u007f-\u009f]+/uy;
const LITERALS = { true: true, false: false, null: null } as const;
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

/** "line 3, column 5" of a position, both counted from 1. */
function place(text: string, position: number): string {
  const lines = text.slice(0, position).split(/\r\n|\n|\r/);
  return `line ${lines.length}, column ${(lines.at(-1) ?? '').length + 1}`;
}

class JsonReader {
  private readonly text: string;
  private position = 0;

  constructor(text: string) {
    this.text = text;
  }

  whole(): unknown {
    const value = this.value('', 1);
    this.skipSpace();
    if (this.position < this.text.length) this.refuse('the end of the file');
    return value;
  }

  private refuse(wanted: string, position: number = this.position): never {
    const character = this.text.codePointAt(position);
    const found =
      character === undefined ? 'the end of the file' : quoted(String.fromCodePoint(character));
    throw new Refusal(place(this.text, position), found, wanted);
  }

  private skipSpace(): void {
    while (' \t\n\r'.includes(this.text[this.position] ?? 'end')) this.position += 1;
  }

  private take(character: string): boolean {
    this.skipSpace();
    if (this.text[this.position] !== character) return false;
    this.position += 1;
    return true;
  }

  private value(path: string, depth: number): unknown {
    this.skipSpace();
    if (depth > DEEPEST) {
      throw new Refusal(
        place(this.text, this.position),
        `more than ${DEEPEST} levels of nesting`,
        `at most ${DEEPEST}`,
      );
    }
    const character = this.text[this.position];
    if (character === '{') return this.object(path, depth);
    if (character === '[') return this.list(path, depth);
    if (character === '"') return this.string();
    return this.number() ?? this.literal(depth === 1 ? 'a model: an object in { }' : 'a value');
  }

  private number(): number | undefined {
    NUMBER.lastIndex = this.position;
    const match = NUMBER.exec(this.text);
    if (!match) return undefined;
    this.position = NUMBER.lastIndex;
    return Number(match[0]);
  }

  private literal(wanted: string): boolean | null {
    for (const [word, value] of Object.entries(LITERALS)) {
      if (this.text.startsWith(word, this.position)) {
        this.position += word.length;
        return value;
      }
    }
    return this.refuse(wanted);
  }

  private list(path: string, depth: number): unknown[] {
    this.position += 1;
    const list: unknown[] = [];
    if (this.take(']')) return list;
    do list.push(this.value(itemPath(path, list.length), depth + 1));
    while (this.take(','));
    if (!this.take(']')) this.refuse('"," or "]"');
    return list;
  }

  private object(path: string, depth: number): Record<string, unknown> {
    this.position += 1;
    // No prototype: a key such as __proto__ is a key like any other.
    const object: Record<string, unknown> = Object.create(null);
    if (this.take('}')) return object;
    do {
      this.skipSpace();
      const start = this.position;
      if (this.text[start] !== '"') this.refuse('a key in double quotes');
      const key = this.string();
      if (key in object) {
        throw new Refusal(
          keyPath(path, key),
          `the key a second time, at ${place(this.text, start)}`,
          'each key once',
        );
      }
      if (!this.take(':')) this.refuse('":"');
      object[key] = this.value(keyPath(path, key), depth + 1);
    } while (this.take(','));
    if (!this.take('}')) this.refuse('"," or "}"');
    return object;
  }

  private string(): string {
    this.position += 1;
    const pieces: string[] = [];
    for (;;) {
      PLAIN_TEXT.lastIndex = this.position;
      const plain = PLAIN_TEXT.exec(this.text);
      if (plain) {
        pieces.push(plain[0]);
        this.position = PLAIN_TEXT.lastIndex;
      } else if (this.text[this.position] === '"') {
        this.position += 1;
        return pieces.join('');
      } else if (this.text[this.position] === '\\') {
        pieces.push(this.escape());
      } else {
        this.refuse('a closing double quote before the end of the line');
      }
    }
  }

  private escape(): string {
    const letter = this.text[this.position + 1] ?? '';
    const simple = ESCAPES[letter];
    if (simple !== undefined) {
      this.position += 2;
      return simple;
    }
    const digits = this.text.slice(this.position + 2, this.position + 6);
    if (letter !== 'u' || !/^[0-9a-fA-F]{4}$/.test(digits)) {
      this.refuse('a JSON escape such as \\n or \\u00e9');
    }
    this.position += 6;
    return String.fromCharCode(Number.parseInt(digits, 16));
  }
}

/**
 * The value of JSON text; a byte order mark at its start is skipped. A number too large for a double reads as Infinity.
 * Throws a Refusal at the first fault.
 */
export function readJson(text: string): unknown {
  return new JsonReader(text.startsWith('\ufeff') ? text.slice(1) : text).whole();
}
