import { readFileSync } from 'node:fs';

/** Rows of a golden table as records by column name; numbers where the whole cell is one. */
export function golden(name: string): Record<string, string | number>[] {
  const text = readFileSync(new URL(`../golden/${name}`, import.meta.url), 'utf8');
  const [header, ...lines] = text.trim().split('\n');
  const keys = header!.split(',');
  return lines.map((line) =>
    Object.fromEntries(
      line
        .split(',')
        .map((cell, i) => [
          keys[i]!,
          cell !== '' && !Number.isNaN(Number(cell)) ? Number(cell) : cell,
        ]),
    ),
  );
}
