/** armscribe clearance MODEL: the certified least clearance of each watched pair over travel × rack. */
import {
  assemble,
  type Corner,
  certifiedRange,
  certify,
  escaped,
  type MeshSurfaces,
  type Model,
  type PairResult,
  unwatchedPairs,
  type Verdict,
  watchedPairs,
} from '../../solver/index.ts';
import { loadModel } from './files.ts';
import { loadMeshes } from './meshes.ts';
import { rounded, unreachedLine } from './print.ts';
import type { Verb } from './refusal.ts';
import { oneFile, sortWords } from './words.ts';

const help = `armscribe clearance MODEL [--json]

The least clearance of each pair of parts over the whole travel (droop to bump, not
cut by stops) and the whole steering limit (rack 0 only where the model states none):
the smallest found and where, and what is proven to be the least there can be.
  --json       one object with unrounded numbers instead of the table
Verdicts: touches (least is 0 or less), clear (the gap wanted by the model's "required"
is proven), tight (less than wanted). Exit status 1 when a pair touches or is tight,
or when the corner cannot be assembled.
`;

/** A pair that is not checked, and the reason. */
interface Unchecked {
  readonly pair: readonly [string, string];
  readonly why: string;
}

interface Answer {
  readonly pairs: readonly PairResult[];
  readonly notChecked: readonly Unchecked[];
}

/** Why a gap that was never found is not reported. */
const NEVER_PLACED = 'the drop link reaches its lever nowhere in the range';

function prove(corner: Corner, meshes: MeshSurfaces): Answer {
  const results = certify(corner, watchedPairs(corner, meshes));
  const unwatched = unwatchedPairs(corner, meshes);
  return {
    pairs: results.filter(({ least }) => Number.isFinite(least)),
    notChecked: [
      ...unwatched.map(({ names, why }) => ({ pair: names, why })),
      ...results
        .filter(({ least }) => !Number.isFinite(least))
        .map(({ names }) => ({ pair: names, why: NEVER_PLACED })),
    ],
  };
}

function rangeNote(model: Model): string {
  const rack = model.steering?.limit === undefined ? 'rack 0 only: no steering limit stated' : '';
  return ['travel from droop to bump, not cut by stops', rack]
    .filter((part) => part !== '')
    .join('; ');
}

function jsonOf(model: Model, { pairs, notChecked }: Answer): string {
  const answer = {
    pairs: pairs.map(({ names, ...rest }) => ({ pair: names, ...rest })),
    range: { ...certifiedRange(model), note: rangeNote(model) },
    notChecked,
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

const VERDICTS: Readonly<Record<Verdict, string>> = {
  clear: 'clear',
  tight: 'tight: less than wanted',
  touch: 'touches',
};

const NUMBERS = [
  { label: 'least', width: 9, of: ({ least }: PairResult) => rounded(least, 2) },
  {
    label: 'proven',
    width: 9,
    of: ({ provenAtLeast }: PairResult) => rounded(provenAtLeast, 2),
  },
  { label: 'wanted', width: 8, of: ({ required }: PairResult) => rounded(required, 1) },
  { label: 'travel', width: 9, of: ({ travel }: PairResult) => rounded(travel, 1) },
  { label: 'rack', width: 8, of: ({ rack }: PairResult) => rounded(rack, 1) },
] as const;

function pairName([first, second]: readonly [string, string]): string {
  return `${escaped(first)} / ${escaped(second)}`;
}

function rangeLine(model: Model): string {
  const { travel, rack } = certifiedRange(model);
  const [droop, bump] = travel.map((end) => rounded(end, 1));
  const [left, right] = rack.map((end) => rounded(end, 1));
  const over = model.steering?.limit === undefined ? 'rack 0' : `rack ${left} to ${right} mm`;
  return `Least gaps, mm, over travel ${droop} to ${bump} mm and ${over} (${rangeNote(model)})`;
}

function tableOf(model: Model, { pairs, notChecked }: Answer): string {
  const sorted = [...pairs].sort((a, b) => a.least - b.least);
  const width = Math.max(
    4,
    ...[...pairs.map(({ names }) => names), ...notChecked.map(({ pair }) => pair)].map(
      (names) => pairName(names).length,
    ),
  );
  const head = NUMBERS.map(({ label, width: wide }) => label.padStart(wide)).join('');
  const lines = sorted.map((result) => {
    const numbers = NUMBERS.map(({ width: wide, of }) => of(result).padStart(wide)).join('');
    return `  ${pairName(result.names).padEnd(width)}${numbers}  ${VERDICTS[result.verdict]}`;
  });
  return [
    escaped(model.name),
    rangeLine(model),
    '',
    `  ${'pair'.padEnd(width)}${head}  verdict`,
    ...lines,
    '',
    'Not checked',
    ...notChecked.map(({ pair, why }) => `  ${pairName(pair).padEnd(width)}  ${escaped(why)}`),
    '',
    ...cautions(model),
    '',
  ].join('\n');
}

function cautions({ tieRod }: Model): readonly string[] {
  const bent =
    tieRod.bends === undefined
      ? []
      : ['The bent tie rod is taken as held by its stud; a real one can roll between its joints.'];
  return [
    'Every least gap lies between "proven" and "least".',
    ...bent,
    'Rigid parts: no bush compliance, no joint play, no tyre deflection or growth; strength is',
    'not checked. Steering and suspension parts carry lives: check every gap by hand at both',
    'locks and at full travel before it is driven.',
  ];
}

/** True when the answer is yes: every pair is clear. */
function isClear({ pairs }: Answer): boolean {
  return pairs.every(({ verdict }) => verdict === 'clear');
}

export const clearance: Verb = {
  name: 'clearance',
  summary: 'clearance MODEL    the least gap of each pair of parts, proven',
  help,
  run: (words, write) => {
    const sorted = sortWords('clearance', words, { json: {} });
    const file = oneFile('clearance', sorted);
    const model = loadModel(file);
    const meshes = loadMeshes(model, file);
    const corner = assemble(model);
    const { broken } = corner.linkage;
    const isJson = sorted.flags.has('json');
    if (broken !== null) {
      const answer = { pairs: [], reached: false, fails: broken, lastTravel: 0, lastRack: 0 };
      write(isJson ? `${JSON.stringify(answer, null, 2)}\n` : `${unreachedLine(answer)}\n`);
      return 1;
    }
    const answer = prove(corner, meshes);
    write(isJson ? jsonOf(model, answer) : tableOf(model, answer));
    return isClear(answer) ? 0 : 1;
  },
};
