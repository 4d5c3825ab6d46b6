/** The numbers in a text that was meant as a tyre size, and the ways they may have been run together. */

export interface SizeTokens {
  /** The numbers in order, at most three, as written. */
  readonly numbers: readonly string[];
  readonly service: 'P' | 'LT' | '';
  /** True where more followed: a load index, a speed mark, a ply rating. */
  readonly hasMore: boolean;
  /** True where digits that ran together were parted. */
  readonly isParted: boolean;
}

/** Capitals, points for commas, and no marks that mean nothing. */
export function tidySize(text: string): string {
  return text
    .toUpperCase()
    .replace(/[×*]/g, 'X')
    .replace(/,/g, '.')
    .replace(/["″”']/g, '')
    .replace(/\\/g, '/')
    .trim();
}

/** How digits without a mark between them part: 2657017, 26570, 7017, 35125017, 351250. */
const RUNS: readonly RegExp[] = [
  /^(\d{3})(\d{2})(\d{2})$/,
  /^(\d{2})(\d{4})(\d{2})$/,
  /^(\d{3})(\d{2})$/,
  /^([2-9]\d)(\d{2})$/,
  /^(\d{2})(\d{4})$/,
  /^(\d+\.\d\d)(\d\d)$/,
];

function parted(number: string): readonly string[] {
  for (const run of RUNS) {
    const found = run.exec(number);
    if (found !== null) return found.slice(1);
  }
  return [number];
}

function serviceOf(tidy: string): SizeTokens['service'] {
  if (/^LT|LT\b/.test(tidy)) return 'LT';
  return /^P\s*\d/.test(tidy) ? 'P' : '';
}

/** Reads the numbers of a tidy text. Digits are parted only where they are too few for a size. */
export function sizeTokens(tidy: string): SizeTokens {
  const all = tidy.match(/\d+(?:\.\d+)?/g) ?? [];
  const service = serviceOf(tidy);
  if (all.length >= 3) {
    const hasMore = all.length > 3 || /\d\s*(?!LT\b)[A-Z]+$/.test(tidy);
    return { numbers: all.slice(0, 3), service, hasMore, isParted: false };
  }
  const apart = all.flatMap(parted);
  const isParted = apart.length === 3;
  return { numbers: isParted ? apart : all, service, hasMore: false, isParted };
}
