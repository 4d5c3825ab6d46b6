/** The inspector's note: one page with two views and five numbers in plain words. */
import {
  fittingsOf,
  hardwareWords,
  type MeasureKey,
  measureRow,
  missingParts,
} from '../../../solver/index.ts';
import { tyreDimensions } from '../../../solver/model/tyre.ts';
import { type Block, figure, heading, list, paragraph } from '../block.ts';
import { cornerView } from '../figures/cornerView.ts';
import { cornerOutline } from '../figures/outline.ts';
import { figureText, lengthText, senseText, smallText } from '../figureWords.ts';
import { type Markup, markup } from '../markup.ts';
import { type Sheet, sheetPages, widthOf } from '../page.ts';
import type { PaperSource, Reading } from '../source.ts';
import { CAUTIONS, SIGNS, setByWords } from '../standing.ts';

export interface PlainNumber {
  readonly figure: string;
  readonly name: string;
  readonly words: string;
}

const SAID: Readonly<Partial<Record<MeasureKey, string>>> = {
  motionRatio:
    'Damper movement for each unit of wheel movement; some quote the inverse. The nearer to 1, the less stiff the spring has to be for the same work at the wheel.',
  antiDive:
    'The share of the nose’s dive under braking that the arms’ slope takes away. 20–30 % is usual (common practice, no source).',
  bumpSteer:
    'How the wheel steers by itself as it rises through ride height, straight ahead. Zero here is not zero elsewhere.',
  scrubRadius:
    'Sideways distance on the ground from the steering axis to the middle of the tyre’s contact. It grows with every mm that a wheel or a spacer moves the tyre out.',
};

function measureNumber(
  { model, settings }: PaperSource,
  set: Reading,
  key: MeasureKey,
): PlainNumber {
  const row = measureRow(key);
  const missing = missingParts(model, row);
  const name = row.label.charAt(0).toUpperCase() + row.label.slice(1);
  if (missing.length > 0) {
    return { figure: 'not known', name, words: `The model does not state ${missing.join(', ')}.` };
  }
  const value = set.at(key);
  const sense = key === 'motionRatio' ? '' : senseText(row, value, settings.unit);
  const words = `${sense === '' ? '' : `${sense.charAt(0).toUpperCase()}${sense.slice(1)}. `}${SAID[key] ?? ''}`;
  return { figure: figureText(row.kind, value, settings.unit), name, words };
}

/** The least gap between tie rod and wheel in the 15 cells. */
function lipNumber({ cycle, settings }: PaperSource): PlainNumber {
  const gaps = cycle.cells.flatMap((cell) =>
    cell.margins
      .filter(({ margin }) => margin.key === 'tieRod/wheel' || margin.key === 'wheel/tieRod')
      .map(({ value }) => ({ cell, value })),
  );
  const name = 'Tie rod to wheel, least gap';
  const least = gaps.sort((a, b) => a.value - b.value)[0];
  if (least === undefined) {
    return { figure: 'not known', name, words: 'The pair is not watched in this model.' };
  }
  const height = cycle.heights.find((each) => each.height === least.cell.height)?.label ?? '';
  const lock = least.cell.lock === 'straight' ? 'straight ahead' : `at ${least.cell.lock} lock`;
  const state = least.value <= 0 ? 'They overlap' : 'Least';
  return {
    figure: smallText(least.value, settings.unit),
    name,
    words: `${state} ${lock}, ${height}, of the ${cycle.cells.length} cells of the cycle; a place between them may be worse. 6 mm is the bare minimum, 10–12 mm preferred (common practice, no source).`,
  };
}

/** The five numbers at ride height, in plain words. */
export function fiveNumbers(source: PaperSource, set: Reading): readonly PlainNumber[] {
  const keys: readonly MeasureKey[] = ['motionRatio', 'antiDive', 'bumpSteer', 'scrubRadius'];
  return [...keys.map((key) => measureNumber(source, set, key)), lipNumber(source)];
}

function numbersBlock(numbers: readonly PlainNumber[]): Block {
  const items: Markup[] = numbers.map(
    ({ figure: value, name, words }) =>
      markup`<li><b>${value}</b><span><strong>${name}</strong><small>${words}</small></span></li>`,
  );
  return { height: 18 * numbers.length, piece: markup`<ul class="numbers">${items}</ul>` };
}

function facts({ model, settings, cycle, ride }: PaperSource): string[] {
  const { tyre, wheel } = model;
  const { overallDiameter } = tyreDimensions(tyre, wheel);
  const say = (mm: number): string => lengthText(mm, settings.unit);
  const end = (key: string) => cycle.heights.find(({ height }) => height === key);
  const [bump, droop] = [end('fullBump'), end('fullDroop')];
  const stops =
    bump === undefined || droop === undefined
      ? []
      : [
          `Travel from ride height: ${say(bump.travel - ride)} up (${setByWords(bump.because)}), ${say(ride - droop.travel)} down (${setByWords(droop.because)}).`,
        ];
  const hardware = fittingsOf(model).map(({ name }) => hardwareWords(name));
  return [
    `Tyre: ${tyre.size ?? 'size not stated'}, Ø ${say(overallDiameter)} unloaded; wheel ${wheel.diameter} × ${wheel.width}, offset ${wheel.offset} mm${(wheel.spacer ?? 0) === 0 ? '' : `, spacer ${wheel.spacer} mm`}.`,
    ...stops,
    `Set by: ${[...hardware, ...(model.tieRod.pitch === undefined ? [] : ['tie rod thread'])].join(', ') || 'no hardware stated'}.`,
  ];
}

function viewBlock(source: PaperSource, set: Reading): Block {
  const { settings } = source;
  const outline = cornerOutline(source, set);
  const width = (widthOf(settings.paper) - 4) / 2;
  // On the shorter paper the views are lower, so that all stays on one page.
  const height = settings.paper === 'a4' ? 72 : 58;
  const views = markup`<div class="views">${[
    cornerView(outline, 'front', settings.unit, width, height),
    cornerView(outline, 'side', settings.unit, width, height),
  ]}</div>`;
  return figure(views, height);
}

export function inspectorSheet(source: PaperSource): Sheet {
  const { set } = source;
  const title = 'Inspector’s note';
  const [signs = ''] = SIGNS;
  if (set === null) {
    const words = paragraph('The corner cannot be assembled at its ride height.');
    return sheetPages('inspector', title, source, [words, list(CAUTIONS)]);
  }
  return sheetPages('inspector', title, source, [
    viewBlock(source, set),
    heading('Five numbers at ride height, straight ahead'),
    numbersBlock(fiveNumbers(source, set)),
    list(facts(source)),
    {
      height: 15,
      piece: markup`<p>${signs} ${source.model.tolerance === undefined ? 'No ± is stated for its points.' : 'Its points are stated with a ±; see the set-up sheet.'} What the model does not state is assumed: see the set-up sheet.</p>`,
    },
    list(CAUTIONS),
  ]);
}
