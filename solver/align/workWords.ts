/** The order of work as a person with two wrenches reads it. */
import type { WorkStep } from './alignment.ts';
import type { HardwareName } from './hardware.ts';

const NAMES: Readonly<Record<HardwareName, string>> = {
  lowerFrontCam: 'lower front cam',
  lowerRearCam: 'lower rear cam',
  upperFrontCam: 'upper front cam',
  upperRearCam: 'upper rear cam',
  upperFrontShim: 'upper front shims',
  upperRearShim: 'upper rear shims',
  tieRod: 'tie rod',
};

/** Changes below these are none: degrees, mm, turns. */
const STILL = 5e-4;

/** What a piece of hardware is called. */
export function hardwareWords(name: HardwareName): string {
  return NAMES[name];
}

function signless(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

function counted(count: number, unit: string): string {
  return `${Math.abs(count)} ${unit}${Math.abs(count) === 1 ? '' : 's'}`;
}

/** The exact change behind a whole count: " (exactly 1.52 marks, 22.8°)"; nothing where it is the whole one. */
function exactly(
  { exactCount, count, unit, to }: WorkStep,
  told: (setting: number) => string,
): string {
  if (Math.abs(exactCount - count) < STILL) return '';
  return ` (exactly ${Math.abs(exactCount).toFixed(2)} ${unit}s, ${told(to)})`;
}

function camWords(step: WorkStep): string {
  const { from, to, whole, unit, sense, count } = step;
  const angle = (setting: number) => `${signless(setting, 1)}°`;
  return unit === null
    ? `turn it from ${angle(from)} to ${angle(to)}, the pivot goes ${sense}`
    : `${counted(count, unit)} ${sense}, from ${angle(from)} to ${angle(whole)}${exactly(step, angle)}`;
}

function shimWords(step: WorkStep, lengthText: (mm: number) => string): string {
  const { from, to, whole, unit, sense, count } = step;
  const verb = to > from ? 'add' : 'take out';
  return unit === null
    ? `${verb} ${lengthText(Math.abs(to - from))}, ${lengthText(to)} in all: the pivot goes ${sense}`
    : `${verb} ${counted(count, unit)}, ${lengthText(whole)} in all: the pivot goes ${sense}${exactly(step, lengthText)}`;
}

function way(change: number): string {
  return change > 0 ? 'longer' : 'shorter';
}

function turnsWords(turns: number): string {
  return `${Math.abs(turns).toFixed(2)} turns ${way(turns)}`;
}

/** The tie rod's turns go with the whole counts before it; with the exact settings they may be others. */
function rodWords({ from, to, whole, unit, count }: WorkStep): string {
  const exact =
    Math.abs(whole - to) < STILL ? '' : ` (with the exact settings ${turnsWords(to - from)})`;
  if (unit === null) return `${turnsWords(whole - from)}${exact}`;
  if (count === 0) return `leave it as it is${exact}`;
  const turns = Math.abs(whole - from).toFixed(2);
  return `${counted(count, unit)} ${way(count)}, ${turns} turns${exact}`;
}

/**
 * One step of the work in words, such as "3 marks inboard, from 0.0° to 45.0° (exactly 2.91 marks, 43.6°)"; lengths as the
 * caller writes them.
 */
export function stepWords(step: WorkStep, lengthText: (mm: number) => string): string {
  const { at, from, to, whole, sense, unit } = step;
  if (Math.abs(to - from) < STILL && Math.abs(whole - from) < STILL) return 'leave it as it is';
  if (at === 'tieRod') return rodWords(step);
  if (unit !== null && step.count === 0) {
    return `leave it as it is (exactly ${Math.abs(step.exactCount).toFixed(2)} ${unit}s ${sense})`;
  }
  return at.endsWith('Cam') ? camWords(step) : shimWords(step, lengthText);
}
