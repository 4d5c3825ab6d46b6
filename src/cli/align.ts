/** armscribe align MODEL: the settings that reach camber, caster and toe. */
import {
  ALIGNED_KEYS,
  type AlignedKey,
  type Alignment,
  type AskedTargets,
  align as alignModel,
  escaped,
  hardwareWords,
  inWords,
  type Model,
  type MovedMeasure,
  measureRow,
  movedBySettings,
  type Setting,
  stepWords,
} from '../../solver/index.ts';
import { loadModel } from './files.ts';
import { rounded } from './print.ts';
import { parseDegrees } from './range.ts';
import type { Verb } from './refusal.ts';
import { about, oneFile, sortWords } from './words.ts';

const help = `armscribe align MODEL [--camber D] [--caster D] [--toe D] [--json]

The cam angles, shims and tie rod turns that bring the set pose (the ride height, rack 0)
to camber, caster and toe: of all that reach them the ones with the least total cam turn
from 0, each cam within 90 degrees either way. Shims count only where that is equal.
  --camber D   degrees, positive leans the top outboard
  --caster D   degrees, positive leans the steering axis to the rear at the top
  --toe D      degrees of this wheel, positive points its front edge in
  --json       one object with unrounded numbers instead of the table
A target left out is the model's own, or else stays as it is, as far as there is hardware
to hold it. Exit status 1 when the targets cannot be reached: then what comes nearest is
told (least distance in camber and caster, toe set by the tie rod; in all three where the
model states no pitch), and which hardware runs out or is lacking.
`;

const OPTIONS = {
  camber: { value: 'a number of degrees' },
  caster: { value: 'a number of degrees' },
  toe: { value: 'a number of degrees' },
  json: {},
} as const;

/** A setting as the object prints it. */
function settingOf({ settings, angles, isWithin }: Setting): object {
  return { settings, result: angles, isWithin };
}

function workOf({ work }: Alignment): readonly object[] {
  return work.map((step) => ({ ...step, says: stepWords(step, millimetres) }));
}

function jsonOf(alignment: Alignment, moved: readonly MovedMeasure[]): string {
  const { reached, after, before, aims, runsOut, lacks, fails } = alignment;
  const answer = {
    reached,
    settings: after.settings,
    result: after.angles,
    isWithin: after.isWithin,
    runsOut,
    lacks,
    ...(fails === null ? {} : { fails }),
    targets: aims,
    before: settingOf(before),
    rounded: alignment.rounded === null ? null : settingOf(alignment.rounded),
    work: workOf(alignment),
    moved,
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

function millimetres(value: number): string {
  return `${rounded(value, 2)} mm`;
}

function meaning(key: AlignedKey, value: number): string {
  const shown = Number(value.toFixed(3));
  return shown === 0 ? '' : (inWords(measureRow(key), shown) ?? '');
}

const FROM = { asked: 'asked for', file: "the model's", asItIs: 'as it is' } as const;

function anglesTable({ before, after, aims, rounded: counts }: Alignment): string[] {
  const heads = ['now', 'target', 'then', ...(counts === null ? [] : ['rounded'])];
  const lines = ALIGNED_KEYS.map((key) => {
    const { value, from, isHeld, plusMinus } = aims[key];
    const numbers = [before.angles?.[key], isHeld ? value : undefined, after.angles?.[key]];
    const all = counts === null ? numbers : [...numbers, counts.angles?.[key]];
    const cells = all.map((cell) => (cell === undefined ? 'none' : rounded(cell, 3)).padStart(10));
    const give = plusMinus === null ? '' : `, ± ${rounded(plusMinus, 3)}`;
    const words = after.angles === null ? '' : meaning(key, after.angles[key]);
    return `  ${key.padEnd(8)}${cells.join('')} deg  ${words.padEnd(20)} ${isHeld ? `target ${FROM[from]}${give}` : 'follows'}`;
  });
  return [`  ${' '.repeat(8)}${heads.map((head) => head.padStart(10)).join('')}`, ...lines];
}

function withinLine({ before, after, rounded: counts }: Alignment): string[] {
  const told = [
    ['Now', before],
    ['Then', after],
    ['Rounded', counts],
  ] as const;
  const words = told.flatMap(([label, setting]) =>
    setting === null || setting.isWithin === null
      ? []
      : [`${label.toLowerCase()} ${setting.isWithin ? 'yes' : 'no'}`],
  );
  return words.length === 0 ? [] : [`Within the tolerances: ${words.join(', ')}.`];
}

function verdict({ reached, runsOut, lacks, after }: Alignment): string[] {
  if (reached) return ['The targets are reached.'];
  const out = runsOut.length === 0 ? [] : [`At the end: ${runsOut.map(hardwareWords).join(', ')}.`];
  const missing = lacks.map((key) =>
    key === 'toe'
      ? 'Toe: the model states no tie rod pitch.'
      : `${key[0]?.toUpperCase()}${key.slice(1)}: too few pivots can be moved.`,
  );
  const near = after.isWithin === true ? ', but the nearest lies within the tolerances' : '';
  return [`The targets cannot be reached exactly${near}; this is the nearest.`, ...out, ...missing];
}

function workLines({ work }: Alignment): string[] {
  if (work.length === 0) return [];
  const steps = work.map((step, i) => {
    const name = step.at === 'tieRod' ? 'tie rod, for toe, last' : hardwareWords(step.at);
    return `  ${i + 1} ${name}: ${stepWords(step, millimetres)}`;
  });
  return [
    '',
    'Order of work, left wheel, from the settings that are there now',
    ...steps,
    '  The right wheel: the same, mirrored; outboard stays outboard. Toe last on both sides.',
  ];
}

/** Measures told beside the angles, with their units and digits; the object has them all. */
const TOLD = [
  ['halfTrack', 'mm', 1],
  ['kingpinInclination', 'deg', 2],
  ['scrubRadius', 'mm', 1],
  ['casterTrail', 'mm', 1],
  ['bumpSteer', 'deg/mm', 4],
  ['rollCentreHeight', 'mm', 1],
  ['plunge', 'mm', 1],
] as const;

function movedLines(moved: readonly MovedMeasure[]): string[] {
  const lines = TOLD.flatMap(([key, unit, digits]) => {
    const found = moved.find((each) => each.key === key);
    if (found === undefined) return [];
    const [before, after] = [rounded(found.before, digits), rounded(found.after, digits)];
    const label = measureRow(key).label.padEnd(22);
    return before === after
      ? []
      : [`  ${label}${before.padStart(10)}${after.padStart(10)} ${unit}`];
  });
  return lines.length === 0
    ? []
    : ['', `What else moves${'now'.padStart(19)}${'then'.padStart(10)}`, ...lines];
}

const CAUTION = [
  '',
  'Rigid parts, no bush compliance, no joint play. Steering parts carry lives: set and check on',
  'an alignment rack; lock cams, jam nuts and new cotter pins by the vehicle maker’s figures.',
];

function tableOf(model: Model, alignment: Alignment, moved: readonly MovedMeasure[]): string {
  return [
    escaped(model.name),
    `Set pose: travel ${rounded(model.travel.ride ?? 0, 1)} mm, rack 0`,
    '',
    ...anglesTable(alignment),
    '',
    ...verdict(alignment),
    ...withinLine(alignment),
    ...workLines(alignment),
    ...movedLines(moved),
    ...CAUTION,
    '',
  ].join('\n');
}

function failedLine({ fails }: Alignment): string {
  return `Not reached: ${fails} cannot be kept; the corner does not come to its ride height.\n`;
}

export const align: Verb = {
  name: 'align',
  summary: 'align MODEL        the settings that reach camber, caster and toe',
  help,
  run: (words, write) => {
    const sorted = sortWords('align', words, OPTIONS);
    const file = oneFile('align', sorted);
    const asked = Object.fromEntries(
      ALIGNED_KEYS.flatMap((key) => {
        const text = sorted.values.get(key);
        return text === undefined ? [] : [[key, parseDegrees(text, about('align', `--${key}`))]];
      }),
    ) as AskedTargets;
    const model = loadModel(file);
    const alignment = alignModel(model, asked);
    const moved = movedBySettings(model, alignment.after.settings);
    if (sorted.flags.has('json')) write(jsonOf(alignment, moved));
    else if (alignment.fails !== null) write(failedLine(alignment));
    else write(tableOf(model, alignment, moved));
    return alignment.reached ? 0 : 1;
  },
};
