/** What points, planes, ways and numbers of the sheet are called. */
import {
  type Aim,
  angleOf,
  inWords,
  type Model,
  measureRow,
  PLANE_AXES,
  type Plane,
  placeOf,
  RATE_LENGTH,
  type Room,
  type Subject,
  type Vector3,
} from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { angle, gapUnit, length } from '../../words/format.ts';

/** Short for a row of buttons, and whole. */
export const SUBJECT_WORDS: Readonly<Record<Subject, readonly [string, string]>> = {
  rodInner: ['Inner end', 'the tie rod’s inner end'],
  rodOuter: ['Outer end', 'the tie rod’s outer end'],
  upperFront: ['Front pivot', 'the upper arm’s front pivot'],
  upperRear: ['Rear pivot', 'the upper arm’s rear pivot'],
  upperBoth: ['Both pivots', 'both upper pivots, by the same way'],
};

export const PLANE_WORDS: Readonly<Record<Plane, readonly [string, string]>> = {
  front: ['Front', 'seen from the front: out and in, up and down'],
  side: ['Side', 'seen from the side: forward and rearward, up and down'],
  above: ['Above', 'seen from above: out and in, forward and rearward'],
};

/** Along each vehicle axis: where less and where more of it lies. */
export const WAYS: readonly (readonly [string, string])[] = [
  ['rearward', 'forward'],
  ['inboard', 'outboard'],
  ['down', 'up'],
];

/** Names of the ways along the two axes of a plane. */
export function waysOf(
  plane: Plane,
): readonly [readonly [string, string], readonly [string, string]] {
  const [i, j] = PLANE_AXES[plane];
  return [WAYS[i]!, WAYS[j]!];
}

/** Below this a move is none, mm: it reads 0.00. */
const STILL = 5e-3;

/** "3.2 mm up, 1.1 mm inboard"; "where it is". */
export function moveWords(from: Vector3, to: Vector3, unit: LengthUnit): string {
  const parts = [0, 1, 2]
    .map((axis) => ({ way: to[axis]! - from[axis]!, words: WAYS[axis]! }))
    .filter(({ way }) => Math.abs(way) > STILL)
    .map(({ way, words }) => {
      const size = length(Math.abs(way), gapUnit(unit), Math.abs(way) < 10 ? 2 : 1);
      return `${size} ${words[way > 0 ? 1 : 0]}`;
    });
  return parts.length === 0 ? 'where it is' : parts.reverse().join(', ');
}

/** What the aim's number is called: it is never negative. */
export function aimName(subject: Subject, aim: Aim, isRateWanted: boolean): string {
  const of = angleOf(subject);
  if (aim === 'overTravel') {
    return of === 'toe' && !isRateWanted
      ? 'toe change from ride, over travel'
      : `${of} off the wanted line`;
  }
  const rate = of === 'toe' ? 'bump steer at ride' : 'bump camber at ride';
  return isRateWanted ? `${rate} off the wanted` : rate;
}

/** The aim's number as it is shown: degrees, or a rate by the unit of length. */
export function aimText(value: number, aim: Aim, unit: LengthUnit): string {
  return aim === 'overTravel' ? angle(value, 3) : rateText(value / RATE_LENGTH, unit);
}

/** A rate, degrees per mm, by the unit of length: "0.12°/100 mm". */
export function rateText(perMm: number, unit: LengthUnit): string {
  const style = figureStyle('degreePerMm', unit);
  return `${figureNumber(figureSteps(perMm, style), style)}${style.unit}`;
}

/** What a wanted rate means: "top goes in as the wheel rises". */
export function rateWords(subject: Subject, perMm: number): string {
  const row = measureRow(angleOf(subject) === 'toe' ? 'bumpSteer' : 'bumpCamber');
  return inWords(row, perMm) ?? '';
}

export function roomTitle(room: Room, plane: Plane): string {
  const [first, second] = waysOf(plane);
  switch (room) {
    case 'picture':
      return 'Best in the picture';
    case 'reach':
      return 'Best within how far it may move';
    case 'first':
      return `Only ${first[1]} or ${first[0]}`;
    case 'second':
      return `Only ${second[1]} or ${second[0]}`;
  }
}

/** Where a subject of a model stands, along x, y, z; no line breaks between a letter and its number. */
export function placeText(place: Vector3, unit: LengthUnit): string {
  const parts = place.map((value, axis) =>
    `${'xyz'[axis]} ${length(value, gapUnit(unit))}`.replaceAll(' ', '\u00a0'),
  );
  return parts.join(', ');
}

/** Whether two models have the subject at the same place. */
export function standsAlike(one: Model, other: Model, subject: Subject): boolean {
  const [a, b] = [placeOf(one, subject), placeOf(other, subject)];
  return a.every((value, axis) => Math.abs(value - b[axis]!) < STILL);
}
