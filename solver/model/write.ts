/** A model as the text of a file: keys in the format's order, whatever fits on one line on one line. */
import type { Model } from './model.ts';
import type { Reader } from './read/reader.ts';
import { model as modelTable, tableOf } from './read/table.ts';

/** Columns within which a part stays on one line. A point does with any numbers: three of 24 characters at the most. */
const LINE_WIDTH = 110;

/** Keys of a part in the order of its table; names the user chose keep the order they came in. */
function keysOf(part: object, reader: Reader<unknown> | undefined): string[] {
  const given = Object.keys(part).filter(
    (key) => (part as Record<string, unknown>)[key] !== undefined,
  );
  if (!reader?.fields) return given;
  const known = Object.keys(reader.fields).filter((key) => given.includes(key));
  return [...known, ...given.filter((key) => !known.includes(key))];
}

/** The items of a list or part, each with what stands before it and the table it follows. */
function itemsOf(
  value: object,
  reader: Reader<unknown> | undefined,
): readonly { label: string; item: unknown; table: Reader<unknown> | undefined }[] {
  if (Array.isArray(value)) {
    const items = reader?.items;
    return value.map((item) => ({ label: '', item, table: items && tableOf(item, items) }));
  }
  return keysOf(value, reader).map((key) => ({
    label: `${JSON.stringify(key)}: `,
    item: (value as Record<string, unknown>)[key],
    table: reader?.fields?.[key]?.reader,
  }));
}

function onOneLine(value: unknown, reader: Reader<unknown> | undefined): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const items = itemsOf(value, reader).map(
    ({ label, item, table }) => label + onOneLine(item, table),
  );
  if (Array.isArray(value)) return `[${items.join(', ')}]`;
  return items.length === 0 ? '{}' : `{ ${items.join(', ')} }`;
}

function lines(
  value: unknown,
  reader: Reader<unknown> | undefined,
  indent: string,
  before: number,
): string {
  const line = onOneLine(value, reader);
  const fits = before + line.length < LINE_WIDTH && indent !== '';
  if (typeof value !== 'object' || value === null || fits) return line;
  const inner = `${indent}  `;
  const items = itemsOf(value, reader).map(
    ({ label, item, table }) =>
      inner + label + lines(item, table, inner, inner.length + label.length),
  );
  if (items.length === 0) return line;
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  return `${open}\n${items.join(',\n')}\n${indent}${close}`;
}

/** The text of a model file, with a line end; reading it gives the model back. Minus zero is written as zero. */
export function writeModel(model: Model): string {
  return `${lines(model, modelTable, '', 0)}\n`;
}
