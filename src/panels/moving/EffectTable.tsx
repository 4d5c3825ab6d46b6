/** What a move does to every measure, most important first: before, after, and the sign in words. */
import {
  type Effect,
  type EffectPlace,
  inWords,
  type MeasureRow,
  measureRow,
  type Pair,
} from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import {
  type FigureStyle,
  figureDifference,
  figureNumber,
  figureSteps,
  figureStyle,
} from '../../words/figures.ts';
import { gapUnit } from '../../words/format.ts';

const PLACES: Readonly<Record<EffectPlace, string>> = {
  set: 'set pose',
  bump: 'full bump',
  droop: 'full droop',
  lock: 'full left lock',
};

/** The row of the toe change, which is no measure of one pose. */
const TOE_CHANGE: Pick<MeasureRow, 'label' | 'kind'> = {
  label: 'toe change over the travel, greatest less least',
  kind: 'degree',
};

interface Told {
  readonly place: EffectPlace;
  readonly pair: Pair;
  /** Steps of the shown figure that it changes by; not finite where it came to exist, went, or comes or goes far away. */
  readonly change: number;
}

function bare(value: number, figure: FigureStyle): string {
  if (Number.isNaN(value)) return 'none';
  return Number.isFinite(value) ? figureNumber(figureSteps(value, figure), figure) : 'far away';
}

/** "0.29 → −0.89°/100 mm", "−1307.6 mm → far away". */
function pairText({ before, after }: Pair, figure: FigureStyle): string {
  const unit = (value: number): string => (Number.isFinite(value) ? figure.unit : '');
  const first = Number.isFinite(after) ? '' : unit(before);
  return `${bare(before, figure)}${first} → ${bare(after, figure)}${unit(after)}`;
}

function changeText(change: number, figure: FigureStyle): string {
  return Number.isFinite(change) ? figureDifference(change, figure) + figure.unit : '';
}

/** The places where the change can be seen in the figures. */
function toldOf({ at }: Effect, figure: FigureStyle): readonly Told[] {
  return (Object.entries(at) as [EffectPlace, Pair][])
    .map(([place, pair]) => ({
      place,
      pair,
      change: figureSteps(pair.after - pair.before, figure),
    }))
    .filter(({ change }) => change !== 0);
}

/** "full bump −0.12, full droop +0.08": the places but the one that leads, in its unit. */
function others(told: readonly Told[], figure: FigureStyle): string {
  return told
    .slice(1)
    .map(({ place, pair, change }) => {
      const text = Number.isFinite(change)
        ? figureDifference(change, figure)
        : `${bare(pair.before, figure)} → ${bare(pair.after, figure)}`;
      return `${PLACES[place]} ${text}`;
    })
    .join(', ');
}

function EffectRow({
  effect,
  told,
  figure,
}: {
  readonly effect: Effect;
  readonly told: readonly Told[];
  readonly figure: FigureStyle;
}) {
  const { key } = effect;
  const row = key === 'toeChange' ? TOE_CHANGE : measureRow(key);
  const [lead] = told;
  if (lead === undefined) return null;
  const { place, pair, change } = lead;
  const isPlain = key === 'toeChange' || !Number.isFinite(pair.after);
  const sense = isPlain ? undefined : inWords(measureRow(key), figureSteps(pair.after, figure));
  const where = key === 'toeChange' || place === 'set' ? '' : `, ${PLACES[place]}`;
  const rest = others(told, figure);
  return (
    <tr data-effect={key}>
      <th scope="row">
        {row.label}
        {where}
        {sense !== undefined && <small>{sense}</small>}
        {rest !== '' && <small>{rest}</small>}
      </th>
      <td>
        <strong data-part="change">{changeText(change, figure)}</strong>
        <small data-part="pair">{pairText(pair, figure)}</small>
      </td>
    </tr>
  );
}

function labelOf({ key }: Effect): string {
  return key === 'toeChange' ? TOE_CHANGE.label : measureRow(key).label;
}

export function EffectTable({
  effects,
  unit,
}: {
  readonly effects: readonly Effect[];
  readonly unit: LengthUnit;
}) {
  const rows = effects.map((effect) => {
    const { kind } = effect.key === 'toeChange' ? TOE_CHANGE : measureRow(effect.key);
    const figure = figureStyle(kind, gapUnit(unit));
    return { effect, figure, told: toldOf(effect, figure) };
  });
  const seen = rows.filter(({ told }) => told.length > 0);
  const unseen = rows.filter(({ told }) => told.length === 0).map(({ effect }) => labelOf(effect));
  return (
    <>
      <table className="moving-table">
        <thead>
          <tr>
            <th scope="col">What moves with it, at ride height</th>
            <th scope="col">Change, before → after</th>
          </tr>
        </thead>
        <tbody>
          {seen.map((row) => (
            <EffectRow key={row.effect.key} {...row} />
          ))}
        </tbody>
      </table>
      {unseen.length > 0 && (
        <p className="moving-note">By less than the last digit: {unseen.join(', ')}.</p>
      )}
    </>
  );
}
