/** The least gaps of the columns, pair by pair: what is known of each, and how it is told. */
import type { PairResult } from '../../../solver/certify/result.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length, lengthNumber, signedLength } from '../../words/format.ts';
import type { FitmentAnswer } from '../../worker/fitmentJob.ts';
import { type GapState, gapState } from '../gap.ts';

export type PairNames = readonly [string, string];

export function pairKey([one, other]: PairNames): string {
  return `${one}/${other}`;
}

/** What is proven of the pairs of a column so far, by key; null where a pair is in no reachable pose. */
export type Gaps = ReadonlyMap<string, PairResult | null>;

export function gapsOf({ proven }: FitmentAnswer): Gaps {
  return new Map(
    proven.map((result) => [pairKey(result.names), Number.isFinite(result.least) ? result : null]),
  );
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

export interface PairRows {
  readonly near: readonly PairNames[];
  readonly far: readonly PairNames[];
}

/** These have a row from the start. */
const ALWAYS: readonly PairNames[] = [
  ['tieRod', 'wheel'],
  ['tieRod', 'tyre'],
];

/** Which pairs have a row of their own, in the order they are proven in. */
export function pairRows(columns: readonly Gaps[]): PairRows {
  const always = new Set(ALWAYS.map(pairKey));
  const keys = new Set([...always, ...columns.flatMap((known) => [...known.keys()])]);
  const least = (key: string): number =>
    Math.min(...columns.map((known) => known.get(key)?.least ?? Number.POSITIVE_INFINITY));
  const isNear = (key: string): boolean => always.has(key) || least(key) <= FAR;
  const all = [...keys].map(namesOf);
  return {
    near: all.filter((pair) => isNear(pairKey(pair))),
    far: all.filter((pair) => !isNear(pairKey(pair))),
  };
}

export interface GapText {
  readonly state: GapState;
  readonly figure: string;
  /** The state in a word, for those who do not see colours, and the difference from the present. */
  readonly words: string;
  readonly where: string;
  /** How sure it is; empty where that is said elsewhere. */
  readonly proof: string;
}

function changeWords(change: number, unit: LengthUnit): string {
  if (Math.abs(change) < 0.05) return 'as now';
  return `${signedLength(change, unit)} ${change > 0 ? 'more' : 'less'} room`;
}

/** Nearer to the bound than this, mm, least and proven are one number to whoever reads. */
const SAME = 0.06;

function proofWords({ least, provenAtLeast }: PairResult, unit: LengthUnit): string {
  if (!Number.isFinite(provenAtLeast)) return 'found, not proven';
  if (least - provenAtLeast <= SAME) return 'proven';
  return `proven ≥ ${length(Math.floor(provenAtLeast * 10) / 10, unit)}`;
}

/** A least gap in words; the difference is told from `present` where there is one. */
export function gapText(own: PairResult, present: PairResult | null, unit: LengthUnit): GapText {
  const shownUnit = gapUnit(unit);
  const state = gapState(own.least, own.required);
  return {
    state,
    figure: length(own.least, shownUnit),
    words:
      present === null ? state : `${state}, ${changeWords(own.least - present.least, shownUnit)}`,
    where: `travel ${lengthNumber(own.travel, unit, 0)}, rack ${length(own.rack, unit, 0)}`,
    proof: proofWords(own, shownUnit),
  };
}

/** The tyre's least gap to anything, and to what; null where there is none yet. */
export function tyreLeast(known: Gaps): { readonly gap: PairResult; readonly to: string } | null {
  let least: { readonly gap: PairResult; readonly to: string } | null = null;
  for (const [key, gap] of known) {
    const [one, other] = namesOf(key);
    if (gap === null || (one !== 'tyre' && other !== 'tyre')) continue;
    if (least === null || gap.least < least.gap.least) {
      least = { gap, to: one === 'tyre' ? other : one };
    }
  }
  return least;
}
