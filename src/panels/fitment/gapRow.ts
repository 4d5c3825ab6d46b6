/** The least gaps of the columns, pair by pair: what is known of each, and how it is told. */
import type { PairResult } from '../../../solver/certify/result.ts';
import { type Model, wantedGap } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length, lengthNumber, signedLength } from '../../words/format.ts';
import type { FitmentAnswer } from '../../worker/fitmentJob.ts';
import { type GapState, gapState } from '../gap.ts';

/** A pair's least gap in one column; `provenAtLeast` is null while it is found but not proven. */
export interface LeastGap extends Pick<PairResult, 'least' | 'travel' | 'rack' | 'required'> {
  readonly provenAtLeast: number | null;
}

export type PairNames = readonly [string, string];

/** The pairs whose least is found at once, before all is proven. */
const FOUND: readonly (readonly ['wheel' | 'tyre', PairNames])[] = [
  ['wheel', ['tieRod', 'wheel']],
  ['tyre', ['tieRod', 'tyre']],
];

export function pairKey([one, other]: PairNames): string {
  return `${one}/${other}`;
}

/** What is known of every pair of a column, by its key; null where a pair has no reachable pose. */
export function leastGaps(
  model: Model,
  { gaps, proven }: FitmentAnswer,
): ReadonlyMap<string, LeastGap | null> {
  const found = FOUND.map(([part, names]): [string, LeastGap | null] => {
    const worst = gaps[part];
    const required = wantedGap(model, ...names);
    const { gap: least, travel, rack } = worst ?? { gap: 0, travel: 0, rack: 0 };
    return [
      pairKey(names),
      worst === null ? null : { least, travel, rack, required, provenAtLeast: null },
    ];
  });
  const rest = proven.map((result): [string, LeastGap | null] => [
    pairKey(result.names),
    Number.isFinite(result.least) ? result : null,
  ]);
  return new Map([...found, ...rest]);
}

/** The names in a key. One of them is the wheel or the tyre; an obstacle's own name may hold a slash. */
function namesOf(key: string): PairNames {
  for (const name of ['wheel', 'tyre']) {
    if (key.endsWith(`/${name}`)) return [key.slice(0, -name.length - 1), name];
  }
  const slash = key.indexOf('/');
  return [key.slice(0, slash), key.slice(slash + 1)];
}

/** Pairs that no column brings nearer than this, mm, are summed up in one line. */
const FAR = 80;

/** The order of the rows: the tie rod first, then the tyre's pairs, then the wheel's. */
function rank([one, other]: PairNames): number {
  if (one === 'tieRod') return other === 'wheel' ? 0 : 1;
  return one === 'tyre' || other === 'tyre' ? 2 : 3;
}

export interface PairRows {
  readonly near: readonly PairNames[];
  readonly far: readonly PairNames[];
}

/** Which pairs have a row of their own. */
export function pairRows(columns: readonly ReadonlyMap<string, LeastGap | null>[]): PairRows {
  const keys = [...new Set(columns.flatMap((known) => [...known.keys()]))];
  const least = (key: string): number =>
    Math.min(...columns.map((known) => known.get(key)?.least ?? Number.POSITIVE_INFINITY));
  const always = new Set(FOUND.map(([, pair]) => pairKey(pair)));
  const isNear = (key: string): boolean => always.has(key) || least(key) <= FAR;
  const sorted = keys.map(namesOf).sort((a, b) => rank(a) - rank(b));
  return {
    near: sorted.filter((pair) => isNear(pairKey(pair))),
    far: sorted.filter((pair) => !isNear(pairKey(pair))),
  };
}

export interface GapText {
  readonly state: GapState;
  readonly figure: string;
  /** The state in a word, for those who do not see colours, and the difference from the present. */
  readonly words: string;
  readonly where: string;
}

function changeWords(change: number, unit: LengthUnit): string {
  if (Math.abs(change) < 0.05) return 'as now';
  return `${signedLength(change, unit)} ${change > 0 ? 'more' : 'less'} room`;
}

/** Nearer to the bound than this, mm, least and proven are one number to whoever reads. */
const SAME = 0.06;

function proofWords({ least, provenAtLeast }: LeastGap, unit: LengthUnit): string {
  if (provenAtLeast === null) return 'found, not proven yet';
  if (!Number.isFinite(provenAtLeast)) return 'found, not proven';
  if (least - provenAtLeast <= SAME) return 'proven';
  return `proven ≥ ${length(Math.floor(provenAtLeast * 10) / 10, unit)}`;
}

/** A least gap in words; the difference is told from `present` where there is one. */
export function gapText(own: LeastGap, present: LeastGap | null, unit: LengthUnit): GapText {
  const shownUnit = gapUnit(unit);
  const state = gapState(own.least, own.required);
  return {
    state,
    figure: length(own.least, shownUnit),
    words:
      present === null ? state : `${state}, ${changeWords(own.least - present.least, shownUnit)}`,
    where: `travel ${lengthNumber(own.travel, unit, 0)}, rack ${length(own.rack, unit, 0)}; ${proofWords(own, shownUnit)}`,
  };
}

/** The tyre's least gap to anything, and to what; null where there is none yet. */
export function tyreLeast(
  known: ReadonlyMap<string, LeastGap | null>,
): { readonly gap: LeastGap; readonly to: string } | null {
  let least: { readonly gap: LeastGap; readonly to: string } | null = null;
  for (const [key, gap] of known) {
    const [one, other] = namesOf(key);
    if (gap === null || (one !== 'tyre' && other !== 'tyre')) continue;
    if (least === null || gap.least < least.gap.least) {
      least = { gap, to: one === 'tyre' ? other : one };
    }
  }
  return least;
}
