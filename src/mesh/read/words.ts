/** Words of a text file, read off its bytes one by one: a scan's text is too long to be split as a whole. */

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const SPACE = 32;
const BACKSLASH = 92;

export interface WordReader {
  /** The next word; null at the end of the file. */
  next(): string | null;
  /** The next word on the present line; null at its end. A backslash before a line's end joins the next line. */
  nextOnLine(): string | null;
  /** Goes to the start of the next line; false at the end of the file. */
  skipLine(): boolean;
  /** Number of the present line, from 1. */
  readonly line: number;
}

export function createWordReader(bytes: Uint8Array, start = 0): WordReader {
  let at = start;
  let line = 1;

  function take(): string {
    const from = at;
    while (at < bytes.length && bytes[at]! > SPACE) at += 1;
    // Numbers and keywords are ASCII; a byte beyond it makes a word that is neither.
    let word = '';
    for (let i = from; i < at; i += 1) word += String.fromCharCode(bytes[i]!);
    return word;
  }

  function isLineEnd(place: number): boolean {
    return bytes[place] === LINE_FEED || bytes[place] === CARRIAGE_RETURN;
  }

  /** Whether a line's end of two bytes begins here. */
  function isPair(place: number): boolean {
    return bytes[place] === CARRIAGE_RETURN && bytes[place + 1] === LINE_FEED;
  }

  /** Steps over everything between words; false at the end of the file. */
  function skipBlank(): boolean {
    for (; at < bytes.length && bytes[at]! <= SPACE; at += 1) {
      if (isLineEnd(at) && !isPair(at)) line += 1;
    }
    return at < bytes.length;
  }

  /** Steps over blanks of the present line and over joins to the next; false at its end. */
  function skipWithin(): boolean {
    while (at < bytes.length && !isLineEnd(at)) {
      if (bytes[at] === BACKSLASH && isLineEnd(at + 1)) {
        at += isPair(at + 1) ? 3 : 2;
        line += 1;
      } else if (bytes[at]! <= SPACE) at += 1;
      else return true;
    }
    return false;
  }

  return {
    next: () => (skipBlank() ? take() : null),
    nextOnLine: () => (skipWithin() ? take() : null),
    skipLine() {
      while (at < bytes.length && !isLineEnd(at)) at += 1;
      at += isPair(at) ? 2 : 1;
      line += 1;
      return at < bytes.length;
    },
    get line() {
      return line;
    },
  };
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** The number a word is; NaN for any other word. */
export function numberOf(word: string | null): number {
  return word !== null && NUMBER.test(word) ? Number(word) : Number.NaN;
}
