/** The alignment sheets: before, target and after of both wheels, filled from the model or blank to fill by hand. */
import {
  ALIGNED_KEYS,
  type AlignedAngles,
  type AlignedKey,
  type Alignment,
  align,
  hardwareWords,
  measureRow,
  stepWords,
} from '../../../solver/index.ts';
import { toeLength } from '../../../solver/measures/toe.ts';
import { tyreDimensions } from '../../../solver/model/tyre.ts';
import { BLANK, type Block, type Cell, heading, list, paragraph, tableBlocks } from '../block.ts';
import { figureText, lengthText, NO_NUMBER, senseText, smallText } from '../figureWords.ts';
import { roomOf, type Sheet, sheetPages } from '../page.ts';
import type { PaperSource } from '../source.ts';
import { standing } from '../standing.ts';

const HEADS = [
  'Angle',
  'Before, left',
  'right',
  'cross',
  'Target',
  'After, left',
  'right',
  'cross',
] as const;
const WIDTHS = [0.19, 0.11, 0.1, 0.1, 0.2, 0.11, 0.1, 0.09];

/** Diameter that toe is read at as a length: over the tyre's tread. */
export function toeDiameter({ model }: Pick<PaperSource, 'model'>): number {
  return tyreDimensions(model.tyre, model.wheel).overallDiameter;
}

/** Toe of both wheels together as a length at that diameter, mm, of wheels that toe alike. */
export function totalToeLength(source: Pick<PaperSource, 'model'>, toe: number): number {
  return 2 * toeLength(toe, toeDiameter(source));
}

function name(key: AlignedKey): string {
  return key === 'toe' ? 'Toe, each wheel' : key.charAt(0).toUpperCase() + key.slice(1);
}

/** What an alignment aims at, and what the settings in whole counts come to. */
export function settled(alignment: Alignment): AlignedAngles | null {
  return (alignment.rounded ?? alignment.after).angles;
}

interface Filled {
  readonly alignment: Alignment;
  readonly source: PaperSource;
  readonly isBlank: boolean;
}

function degreesText(value: number | undefined): string {
  return value === undefined ? NO_NUMBER : figureText('degree', value, 'mm');
}

function sides(value: string, isBlank: boolean): Cell[] {
  return isBlank ? [BLANK, BLANK, BLANK] : [value, value, degreesText(0)];
}

function targetText({ aims }: Alignment, key: AlignedKey, isBlank: boolean): Cell {
  const { value, from, plusMinus, isHeld } = aims[key];
  if (isBlank && from !== 'file') return BLANK;
  const give = plusMinus === null ? '' : ` ±${plusMinus}°`;
  if (from === 'asItIs') return isHeld ? `${degreesText(value)}, as it is` : 'follows';
  return `${degreesText(value)}${give}`;
}

function angleRows({ alignment, isBlank }: Filled): Cell[][] {
  const after = settled(alignment);
  return ALIGNED_KEYS.map((key) => [
    name(key),
    ...sides(degreesText(alignment.before.angles?.[key]), isBlank),
    targetText(alignment, key, isBlank),
    ...sides(degreesText(after?.[key]), isBlank),
  ]);
}

/** Total toe has no sides: degrees, then the length with its diameter. */
function totalRows({ alignment, source, isBlank }: Filled): Cell[][] {
  const { unit } = source.settings;
  const { before, aims } = alignment;
  const diameter = lengthText(toeDiameter(source), unit);
  const isAimed = aims.toe.from === 'file' || !isBlank;
  const row = (label: string, said: (toe: number) => string): Cell[] => {
    const cell = (toe: number | undefined): Cell =>
      isBlank ? BLANK : toe === undefined ? NO_NUMBER : said(toe);
    return [
      label,
      cell(before.angles?.toe),
      '',
      '',
      isAimed ? said(aims.toe.value) : BLANK,
      cell(settled(alignment)?.toe),
      '',
      '',
    ];
  };
  return [
    row('Total toe', (toe) => degreesText(2 * toe)),
    row(`Total toe at Ø ${diameter}`, (toe) => smallText(totalToeLength(source, toe), unit)),
  ];
}

/** Rows that a technician reads beside these, only on the blank sheet. */
const ALSO = [
  'Kingpin inclination',
  'Ride height, ground to wheel arch',
  'Tyre pressure',
  'Camber, steered 20° in',
  'Camber, steered 20° out',
];

function also(): Cell[][] {
  return ALSO.map((label) => [label, BLANK, BLANK, BLANK, '', BLANK, BLANK, BLANK]);
}

function senses({ alignment }: Filled): string[] {
  const after = settled(alignment);
  if (after === null) return [];
  const words = ALIGNED_KEYS.map(
    (key) => `${key} ${degreesText(after[key])}: ${senseText(measureRow(key), after[key], 'mm')}`,
  );
  return [`After: ${words.join('; ')}.`];
}

/** Whether whole marks, shims and flats stay within the tolerances, where both are stated. */
function counted(rounded: Alignment['rounded']): string {
  if (rounded === null || rounded.isWithin === null) return '';
  return rounded.isWithin
    ? ' In whole counts the angles stay within their ±.'
    : ' In whole counts an angle leaves its ±: set what is between the marks by reading.';
}

function verdict({ reached, rounded, runsOut, lacks, fails }: Alignment): string {
  if (fails !== null)
    return `The corner does not come to its ride height: ${fails} cannot be kept.`;
  if (reached) return `The targets are reached by the exact settings.${counted(rounded)}`;
  const out =
    runsOut.length === 0
      ? ''
      : ` At the end of its range: ${runsOut.map(hardwareWords).join(', ')}.`;
  const missing =
    lacks.length === 0 ? '' : ` Cannot be set for want of hardware: ${lacks.join(', ')}.`;
  return `The targets cannot be reached exactly; this is what comes nearest.${out}${missing}`;
}

function workBlocks({ alignment, source }: Filled): Block[] {
  const { unit } = source.settings;
  const steps = alignment.work.map((step) => {
    const where = step.at === 'tieRod' ? 'tie rod, for toe, last' : hardwareWords(step.at);
    return `${where}: ${stepWords(step, (mm) => smallText(mm, unit))}`;
  });
  return [
    heading('Order of work, left wheel; the right one is its mirror image'),
    ...(steps.length === 0
      ? [paragraph('The model has no hardware that could be set.')]
      : [list(steps, true)]),
    paragraph(verdict(alignment)),
  ];
}

function byHand(): Block[] {
  return [
    heading('By hand'),
    list([
      'Cross is left less right; aim for the preferred value and keep cross within about half a degree (common practice, no source).',
      'Caster without a rack: caster ≈ 1.46 × (camber steered 20° in − camber steered 20° out), exactly 1/(2 sin 20°) for small angles. Caster and camber first, together; toe last.',
      'Toe in a length means nothing without the diameter it was read at: write it beside it.',
    ]),
    heading('Vehicle, who measured, and what was found'),
    ...tableBlocks(
      {
        caption: 'Vehicle and notes',
        heads: ['', 'Written by hand'],
        rows: [
          'Vehicle',
          'Mileage',
          'Measured by',
          'Wheel and tyre',
          'Notes',
          ' ',
          '  ',
          '   ',
        ].map((label): Cell[] => [label, BLANK]),
        widths: [0.25, 0.75],
      },
      1e3,
    ),
  ];
}

export function alignmentSheet(source: PaperSource, isBlank: boolean): Sheet {
  const filled: Filled = { alignment: align(source.model, {}), source, isBlank };
  const key = isBlank ? 'alignment-blank' : 'alignment';
  const title = isBlank ? 'Alignment sheet, to fill in' : 'Alignment sheet';
  const said = isBlank
    ? 'At ride height, on level ground, rack straight ahead. Targets are the model’s own, where it states any.'
    : 'At ride height, rack straight ahead, as an alignment rack would read it. The model describes the left corner; the right one is taken as its mirror image, so that cross reads 0: measure both. After is what the settings in whole marks, shims and flats come to.';
  return sheetPages(key, title, source, [
    paragraph(said),
    ...tableBlocks(
      {
        caption: 'Alignment',
        heads: HEADS,
        rows: [...angleRows(filled), ...totalRows(filled), ...(isBlank ? also() : [])],
        widths: WIDTHS,
      },
      roomOf(source.settings.paper),
    ),
    ...(isBlank ? byHand() : [...senses(filled).map(paragraph), ...workBlocks(filled)]),
    ...standing(source),
  ]);
}
