/** The order of work at the alignment hardware, in words that two people with a wrench each can follow. */
import type { HardwareName, Settings, WorkStep } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { fixed, length } from '../../words/format.ts';
import { counted } from './hardware.ts';

const NAMES: Readonly<Record<HardwareName, string>> = {
  lowerFrontCam: 'front lower cam',
  lowerRearCam: 'rear lower cam',
  upperFrontCam: 'front upper cam',
  upperRearCam: 'rear upper cam',
  upperFrontShim: 'front upper shims',
  upperRearShim: 'rear upper shims',
  tieRod: 'tie rod',
};

/** "front lower cam". */
export function hardwareWords(name: HardwareName): string {
  return NAMES[name];
}

/** Size of a change where nothing is counted, or exactly. */
function amount({ at, from, to }: WorkStep, unit: LengthUnit): string {
  const size = Math.abs(to - from);
  if (at === 'tieRod') return `${fixed(size, 2)} turns`;
  return at.endsWith('Shim') ? length(size, unit, 2) : `${fixed(size, 1)}°`;
}

const OTHER_WAY: Readonly<Record<NonNullable<WorkStep['sense']>, WorkStep['sense']>> = {
  outboard: 'inboard',
  inboard: 'outboard',
  forward: 'rearward',
  rearward: 'forward',
  up: 'down',
  down: 'up',
  longer: 'shorter',
  shorter: 'longer',
};

/** "3 marks outboard", "leave it"; in whole marks, or as exact as it was found. */
export function workWords(step: WorkStep, isWhole: boolean, unit: LengthUnit): string {
  const { unit: one, exactCount, count, sense } = step;
  const isCounted = one !== null && isWhole;
  if (sense === null || (isCounted && count === 0)) return 'leave it as it is';
  if (isCounted) {
    // The rod makes good what whole marks leave of toe: its whole flats may go the other way than the exact ones.
    return `${counted(count, one)} ${count * exactCount < 0 ? OTHER_WAY[sense] : sense}`;
  }
  const size = amount(step, unit);
  return one === null
    ? `${size} ${sense}`
    : `${size} ${sense} (${fixed(Math.abs(exactCount), 2)} ${one}s)`;
}

/** How it then stands: "stands at −30.0°". */
export function settingWords({ at, to }: WorkStep, settings: Settings, unit: LengthUnit): string {
  const set = (at === 'tieRod' ? settings.tieRodTurns : settings[at]) ?? to;
  if (at === 'tieRod') return `then at ${fixed(set, 2)} turns`;
  return `then at ${at.endsWith('Shim') ? length(set, unit, 2) : `${fixed(set, 1)}°`}`;
}
