/** What aligning a corner answers. Angles degrees, as an alignment rack reads them at the set pose. */
import type { Failure } from '../linkage/linkage.ts';
import type { HardwareName, PivotHardware, Settings } from './hardware.ts';

export const ALIGNED_KEYS = ['camber', 'caster', 'toe'] as const;
export type AlignedKey = (typeof ALIGNED_KEYS)[number];

/** Camber, caster and toe of the set pose. */
export type AlignedAngles = Readonly<Record<AlignedKey, number>>;

/** Some of the angles. As targets asked for: one left out is the model's own, or else stays as it is. */
export type AskedTargets = Partial<AlignedAngles>;

/** One target in force. */
export interface Aimed {
  readonly value: number;
  readonly from: 'asked' | 'file' | 'asItIs';
  /**
   * False of an angle that nobody states and that there is no hardware to hold: it follows what is set, `value` being where it
   * is now.
   */
  readonly isHeld: boolean;
  /** The tolerance the model states; null where it states none. It stays that of the model when another value is asked for. */
  readonly plusMinus: number | null;
}

/** Settings and what they give; `angles` is null where the corner cannot be assembled or stand so. */
export interface Setting {
  readonly settings: Settings;
  readonly angles: AlignedAngles | null;
  /** Whether every angle is within its ±; null where the model states no ± at all, or there are no angles. */
  readonly isWithin: boolean | null;
}

/** One thing to do with a wrench, in the order of work: cams and shims from the front lower pivot on, the tie rod last. */
export interface WorkStep {
  readonly at: HardwareName;
  /** Setting before and after, exact: degrees, mm, or turns. */
  readonly from: number;
  readonly to: number;
  /** Setting after, in whole counts (the tie rod's for the whole counts before it); `to` where nothing is counted. */
  readonly whole: number;
  /** What is counted (marks of a cam, shims, flats of the adjuster); null where the model does not say how many there are. */
  readonly unit: 'mark' | 'shim' | 'flat' | null;
  /** The change in that unit, exact and whole, with the sign of `to − from`; 0 where `unit` is null. */
  readonly exactCount: number;
  readonly count: number;
  /** Which way the pivot moves, or what becomes of the rod; null where nothing is to be done. */
  readonly sense:
    | 'outboard'
    | 'inboard'
    | 'forward'
    | 'rearward'
    | 'up'
    | 'down'
    | 'longer'
    | 'shorter'
    | null;
}

/** The settings that reach the targets with the least cam turn, or those that come nearest. */
export interface Alignment {
  readonly aims: Readonly<Record<AlignedKey, Aimed>>;
  /** True when every target that is held is reached to 1e-6 degrees. */
  readonly reached: boolean;
  readonly before: Setting;
  readonly after: Setting;
  /** `after` in whole marks, shims and flats, toe set last for them; null where nothing is counted. */
  readonly rounded: Setting | null;
  /** Cams at ±90 degrees and shims at none or the most, where the targets are out of reach. */
  readonly runsOut: readonly PivotHardware[];
  /** Targets that cannot be set for want of hardware. */
  readonly lacks: readonly AlignedKey[];
  /** What cannot be kept where the corner cannot stand at ride with any settings tried; else null. */
  readonly fails: Failure | null;
  readonly work: readonly WorkStep[];
}
