/** Laws of the model file's door: what is written reads back, and whatever is read is answered, never thrown at. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Model } from '../../solver/model/model.ts';
import {
  formatModelError,
  type ModelResult,
  parseModel,
  readModel,
} from '../../solver/model/parse.ts';
import { model as modelTable, walk } from '../../solver/model/read/table.ts';
import { writeModel } from '../../solver/model/write.ts';
import { FULL_MODEL } from '../support/full-model.ts';

type Part = Record<string, unknown>;

/** The same files every time, unless another seed is asked for. */
const SEED = Number(process.env['SEED'] ?? 1);

const FULL_TEXT = JSON.stringify(FULL_MODEL, null, 1);

/** Every [part, key] of a value, lists included. */
function places(value: unknown): [Part, string][] {
  if (typeof value !== 'object' || value === null) return [];
  const part = value as Part;
  return Object.keys(part).flatMap((key) => [[part, key] as [Part, string], ...places(part[key])]);
}

/** A sound model reads back as itself; an error is one printable line with all its four parts. */
function expectAnswer(result: ModelResult): void {
  if (result.ok) {
    const again = parseModel(writeModel(result.model), 'again.json');
    expect(again).toEqual(result);
    return;
  }
  const { file, path, found, wanted } = result.error;
  for (const part of [file, path, found, wanted]) expect(part).not.toBe('');
  const line = formatModelError(result.error);
  expect(line.startsWith('fuzz.json: ')).toBe(true);
  expect(line).not.toMatch(/[\p{Cc}\u2028\u2029]/u);
  expect(line.length).toBeLessThan(600);
}

test('the model these laws start from uses every key of the format', () => {
  const unused: string[] = [];
  walk(FULL_MODEL, (value, path, { fields }) => {
    if (!fields || /^tyre$|Cam$/.test(path)) return;
    for (const key of Object.keys(fields))
      if (!(key in (value as Part))) unused.push(`${path}.${key}`);
  });
  // A pivot has a cam or shims.
  expect(unused).toEqual(['upperArm.rearCam', 'upperArm.frontShim']);
  expect(Object.keys(FULL_MODEL)).toEqual(Object.keys(modelTable.fields ?? {}));
});

describe('parse(write(model)) is the model', () => {
  test('for the full one, in the order of the table, whatever order it came in', () => {
    const text = writeModel(FULL_MODEL);
    expect(parseModel(text, 'full.json')).toEqual({ ok: true, model: FULL_MODEL });
    expect(JSON.stringify(JSON.parse(text))).toBe(JSON.stringify(FULL_MODEL));
    const reversed = (value: unknown): unknown =>
      Array.isArray(value) || typeof value !== 'object' || value === null
        ? value
        : Object.fromEntries(
            Object.entries(value)
              .reverse()
              .map(([key, item]) => [key, reversed(item)]),
          );
    const { required, tolerance, ...rest } = FULL_MODEL;
    const named = { required, tolerance };
    expect(writeModel({ ...(reversed(rest) as Model), ...named } as Model)).toBe(text);
  });

  test('with a point on one line, however long its numbers and however deep it stands', () => {
    const long = -1 / 7e300;
    const longest = [long, long, long] as const;
    expect(String(long)).toHaveLength(24);
    const points = [longest, longest];
    const text = writeModel({ ...FULL_MODEL, knuckle: { tubes: [{ points, diameter: 1 / 3 }] } });
    expect(text.split(JSON.stringify(longest).replaceAll(',', ', '))).toHaveLength(3);
  });

  test('with any of its optional keys left out and any of its numbers moved', () => {
    let sound = 0;
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.nat(),
            fc.constantFrom('drop', 'move'),
            fc.double({ min: -3, max: 3, noNaN: true }),
          ),
          { maxLength: 12 },
        ),
        (changes) => {
          const model = structuredClone(FULL_MODEL) as unknown as Part;
          for (const [pick, kind, by] of changes) {
            const all = places(model);
            const [part, key] = all[pick % all.length] ?? [model, 'notes'];
            if (kind === 'drop' && !Array.isArray(part)) delete part[key];
            else if (typeof part[key] === 'number') part[key] = (part[key] as number) + by;
          }
          const result = readModel(model, 'fuzz.json');
          if (result.ok) sound += 1;
          expectAnswer(result);
        },
      ),
      { numRuns: 3000, seed: SEED },
    );
    expect(sound).toBeGreaterThan(300);
  });
});

describe('damage by the thousand is answered, never thrown at', () => {
  const value = fc.oneof(
    fc.jsonValue(),
    fc.double(),
    fc.string({ unit: 'binary' }),
    fc.constantFrom(null, [], {}, 0, -0, -1, 1e5, '', 'lowerArm', [0, 0, 0], [[1, 2]]),
    fc.anything(),
  );
  const key = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 50 }),
    fc.constantFrom(
      '__proto__',
      'constructor',
      'toString',
      'hasOwnProperty',
      'format',
      'on',
      'a/b',
    ),
  );

  /** Damages the part that holds the value picked. */
  function damage(model: Part, pick: number, kind: string, by: unknown, name: string): void {
    const all = places(model);
    const [part, at] = all[pick % all.length] ?? [model, 'name'];
    if (Object.isFrozen(part)) return;
    if (kind === 'remove') delete part[at];
    else if (kind === 'replace') part[at] = by;
    else
      Object.defineProperty(part, Array.isArray(part) ? part.length : name, {
        value: kind === 'double' ? structuredClone(part[at]) : by,
        enumerable: true,
        configurable: true,
        writable: true,
      });
  }

  test('parts removed, replaced, doubled under another name', () => {
    const change = fc.tuple(
      fc.nat(),
      fc.constantFrom('remove', 'replace', 'double', 'add'),
      fc.oneof(fc.jsonValue(), value),
      key,
    );
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        const model = structuredClone(FULL_MODEL) as unknown as Part;
        for (const [pick, kind, by, name] of changes) damage(model, pick, kind, by, name);
        expectAnswer(readModel(model, 'fuzz.json'));
      }),
      { numRuns: 5000, seed: SEED },
    );
  });

  test('characters removed, replaced, put in, pieces moved and doubled', () => {
    const length = FULL_TEXT.length;
    const piece = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 4 }),
      fc.constantFrom(
        '"',
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '\\',
        '\n',
        '\u0000',
        '-',
        'e',
        '1e999',
        'null',
        '\ud800',
      ),
    );
    const change = fc.tuple(fc.nat(length), fc.nat(12), piece, fc.nat(length));
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        let text = FULL_TEXT;
        for (const [at, cut, put, from] of changes) {
          const moved = put === '' ? text.slice(from, from + 40) : put;
          text = text.slice(0, at) + moved + text.slice(at + cut);
        }
        expectAnswer(parseModel(text, 'fuzz.json'));
      }),
      { numRuns: 5000, seed: SEED },
    );
  });

  test('text that was never a model', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json()), (text) => {
        expectAnswer(parseModel(text, 'fuzz.json'));
      }),
      { numRuns: 3000, seed: SEED },
    );
  });

  test('JSON is read as the language reads it, and refused where the language refuses it', () => {
    const language = (text: string): unknown => {
      try {
        return JSON.parse(text);
      } catch {
        return undefined;
      }
    };
    fc.assert(
      fc.property(
        fc.json(),
        fc.nat(),
        fc.string({ unit: 'binary', maxLength: 1 }),
        (json, at, put) => {
          const where = at % (json.length + 1);
          const text = json.slice(0, where) + put + json.slice(where);
          const isObject = /^\s*\{/.test(text);
          const result = parseModel(text, 'fuzz.json');
          const isSyntax = !result.ok && /^line \d+, column \d+$/.test(result.error.path);
          expect(isSyntax).toBe(language(text) === undefined);
          if (!isSyntax && !isObject && !result.ok) expect(result.error.path).toBe('(whole file)');
        },
      ),
      { numRuns: 3000, seed: SEED },
    );
  });
});
