/** What is said below the picture: the region within the limit, how well the point is known, what the ideal line is. */
import { angleOf, type IdealLine, PLANE_AXES, type Vector3 } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { limitOf, type WhereState } from '../../state/where.ts';
import { gapUnit, length } from '../../words/format.ts';
import { shareWithin } from './bands.ts';
import { aimName, aimText, moveWords, rateText, rateWords } from './words.ts';

/** What the aim's number is called for what is asked. */
export function nameOf({ subject, aim, question }: WhereState): string {
  return aimName(subject, aim, question !== null && question.wanted !== 0);
}

function Known({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { start, aim } = state;
  if (start === null) return null;
  if (start.known === null) {
    return (
      <p>
        How well the point is known: not stated. A tolerance in the model draws its uncertainty
        here.
      </p>
    );
  }
  const { sigma, within } = start.known;
  const [least, most] = within;
  return (
    <p>
      The point is known to ±{length(sigma, gapUnit(unit), 2)} in each direction (one standard
      uncertainty; the circles are one and two). Within two, {nameOf(state)} lies between{' '}
      {aimText(least, aim, unit)} and {aimText(most, aim, unit)}.
    </p>
  );
}

/** The place that the ideal point is, in the plane of the picture. */
function idealPlace({ question, start }: WhereState, at: readonly [number, number]): Vector3 {
  const [i, j] = PLANE_AXES[question!.plane];
  return start!.present.place.map((value, axis) =>
    axis === i ? at[0] : axis === j ? at[1] : value,
  ) as unknown as Vector3;
}

/** Whether a place of the plane lies in the picture. */
function isSeen({ question, start }: WhereState, at: readonly [number, number]): boolean {
  const axes = PLANE_AXES[question!.plane];
  return at.every(
    (value, n) => Math.abs(value - start!.present.place[axes[n]!]!) <= question!.half,
  );
}

/** Whether a line of the plane crosses the picture. */
function crosses({ question, start }: WhereState, { a, b, c }: IdealLine): boolean {
  const [i, j] = PLANE_AXES[question!.plane];
  const { place } = start!.present;
  const reach = question!.half * (Math.abs(a) + Math.abs(b));
  return Math.abs(a * place[i]! + b * place[j]! - c) <= reach;
}

function IdealWords({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { start, question, subject } = state;
  if (start === null || question === null) return null;
  const of = angleOf(subject) === 'toe' ? 'bump steer' : 'bump camber';
  const rate =
    question.wanted === 0
      ? 'zero'
      : `${rateText(question.wanted, unit)} (${rateWords(subject, question.wanted)})`;
  if (start.ideal === null) {
    return (
      <p>
        Dash-dotted: {of} at ride is {rate}. Ride is not the design pose here, or something is set,
        so the line is not quite straight and is drawn from the picture’s own numbers.
      </p>
    );
  }
  const { line, point } = start.ideal;
  if (line === null)
    return (
      <p>
        No place in this plane has {of} at ride of exactly {rate}.
      </p>
    );
  const ideal = point === null ? null : idealPlace(state, point);
  const where = crosses(state, line) ? 'Dash-dotted' : 'Outside this picture';
  return (
    <p>
      {where}, the ideal line: {of} at ride is exactly {rate} with the point anywhere on it.
      {ideal !== null &&
        ` At the ideal point, ${isSeen(state, point!) ? 'the ring' : 'outside the picture'} (${moveWords(start.present.place, ideal, unit)}), it does not begin to change either.`}
    </p>
  );
}

function Region({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { picture, aim } = state;
  if (picture === null) return null;
  const limit = limitOf(state);
  const share = shareWithin(picture.values, limit);
  if (share === null) return null;
  const percent = share > 0 && share < 0.01 ? 'Less than 1' : String(Math.round(100 * share));
  return (
    <p data-part="region">
      {share === 0
        ? `No place in the picture is within ${aimText(limit, aim, unit)}.`
        : `${percent} % of the picture is within ${aimText(limit, aim, unit)}.`}
    </p>
  );
}

export function Notes({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  return (
    <>
      <Region state={state} unit={unit} />
      <Known state={state} unit={unit} />
      <IdealWords state={state} unit={unit} />
    </>
  );
}
