/** Limits in plain trade words: what is held, and what has happened where it is met. */
import type { MarginKind, MarginUnit } from './margin.ts';

export interface LimitWords {
  readonly kind: MarginKind;
  readonly unit: MarginUnit;
  readonly label: string;
  readonly met: string;
}

function words(kind: MarginKind, unit: MarginUnit, label: string, met: string): LimitWords {
  return { kind, unit, label, met };
}

/** By the limit's key in the model. */
export const LIMIT_WORDS: Readonly<Record<string, LimitWords>> = {
  'stops.bump': words('stop', 'mm', 'bump stop', 'bump stop met'),
  'stops.droop': words('stop', 'mm', 'droop stop', 'droop stop met'),
  'coilover.minLength': words('length', 'mm', 'coilover, shortest', 'coilover fully short'),
  'coilover.maxLength': words('length', 'mm', 'coilover, longest', 'coilover topped out'),
  'strap.length': words('length', 'mm', 'limit strap', 'strap tight'),
  'lowerArm.ballJointLimit': words('angle', 'degree', 'lower ball joint', 'lower ball joint binds'),
  'upperArm.ballJointLimit': words('angle', 'degree', 'upper ball joint', 'upper ball joint binds'),
  'tieRod.endLimit': words('angle', 'degree', 'tie rod end, outer', 'outer tie rod end binds'),
  'tieRod.innerLimit': words('angle', 'degree', 'tie rod end, inner', 'inner tie rod end binds'),
  'halfShaft.outerLimit': words('angle', 'degree', 'outer CV angle', 'outer CV at its angle'),
  'halfShaft.innerLimit': words('angle', 'degree', 'inner CV angle', 'inner CV at its angle'),
  'halfShaft.plungeIn': words('plunge', 'mm', 'half-shaft plunge, in', 'half-shaft plunged in'),
  'halfShaft.plungeOut': words('plunge', 'mm', 'half-shaft plunge, out', 'half-shaft pulled out'),
};

/** The rack's end on the side of a lock. */
export function rackWords(lock: 'left' | 'right'): LimitWords {
  return words('steering', 'mm', `rack, ${lock} lock`, `rack at its end, ${lock} lock`);
}

export const DROP_LINK_WORDS: LimitWords = words(
  'dropLink',
  'mm',
  'drop link’s reach',
  'drop link at the end of its reach',
);

export const LINKAGE_WORDS: LimitWords = words(
  'linkage',
  'mm',
  'linkage’s reach',
  'linkage can go no further',
);

const PART_WORDS: Readonly<Record<string, string>> = {
  tieRod: 'tie rod',
  upperArm: 'upper arm',
  lowerArm: 'lower arm',
  antiRollBarLink: 'drop link',
  halfShaft: 'half-shaft',
};

/** A part as people call it; an obstacle keeps its own name. */
export function partWords(name: string): string {
  return PART_WORDS[name] ?? name;
}

/** Two watched parts. */
export function pairWords(first: string, second: string): LimitWords {
  const a = partWords(first);
  const b = partWords(second);
  return words('gap', 'mm', `${a} to ${b}`, `${a} touches ${b}`);
}
