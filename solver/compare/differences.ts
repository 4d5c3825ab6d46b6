/** Differences of two designs in plain words, a pair of phrases a measure: "leans in 0.40° more". */
import type { ComparedKey } from './measured.ts';

/** What grows says `more`, what shrinks `less`; the amount stands at {}. */
interface Plain {
  readonly more: string;
  readonly less: string;
}

/** The sense of either sign; "0.40° more" or "0.40° less" stands at {}. */
interface Signed {
  readonly positive: string;
  readonly negative: string;
}

const LONGER: Plain = { more: '{} longer', less: '{} shorter' };
const HIGHER: Plain = { more: '{} higher', less: '{} lower' };
const LEFT: Plain = { more: '{} farther left', less: '{} farther right' };
const STEERS: Plain = { more: 'steers {} more', less: 'steers {} less' };
const BENT: Plain = { more: 'bent {} more', less: 'bent {} less' };
const TILTED: Plain = { more: 'tilted {} more', less: 'tilted {} less' };
const APART: Plain = { more: '{} farther apart', less: '{} closer' };
const OUTBOARD: Signed = { positive: '{} outboard', negative: '{} inboard' };
const AHEAD: Signed = { positive: '{} ahead', negative: '{} behind' };

const PHRASES: Readonly<Record<ComparedKey, Plain | Signed>> = {
  travel: HIGHER,
  rack: LEFT,
  camber: { positive: 'leans out {}', negative: 'leans in {}' },
  caster: { positive: 'leans back {}', negative: 'leans forward {}' },
  toe: { positive: 'front edge in {}', negative: 'front edge out {}' },
  kingpinInclination: { positive: 'leans in {}', negative: 'leans out {}' },
  scrubRadius: OUTBOARD,
  casterTrail: AHEAD,
  spindleOffset: OUTBOARD,
  spindleTrail: AHEAD,
  steerAngle: { positive: 'steers left {}', negative: 'steers right {}' },
  halfTrack: { more: '{} wider', less: '{} narrower' },
  bumpSteer: {
    positive: 'goes in {} as the wheel rises',
    negative: 'goes out {} as the wheel rises',
  },
  bumpCamber: {
    positive: 'top goes out {} as the wheel rises',
    negative: 'top goes in {} as the wheel rises',
  },
  bumpCaster: {
    positive: 'leans back {} as the wheel rises',
    negative: 'leans forward {} as the wheel rises',
  },
  trackRate: {
    positive: 'goes out {} as the wheel rises',
    negative: 'goes in {} as the wheel rises',
  },
  steerPerRack: {
    positive: 'steers left {} as the rack goes left',
    negative: 'steers right {} as the rack goes left',
  },
  rollCentreHeight: HIGHER,
  frontViewCentreY: LEFT,
  frontViewCentreZ: HIGHER,
  sideViewCentreX: { more: '{} farther forward', less: '{} farther back' },
  sideViewCentreZ: HIGHER,
  antiDive: { positive: 'resists dive {}', negative: 'adds to dive {}' },
  antiLift: { positive: 'resists lift {}', negative: 'adds to lift {}' },
  damperLength: LONGER,
  motionRatio: { positive: 'damper moves {}', negative: 'damper opens {} in bump' },
  motionRatioRate: {
    positive: 'grows {} as the wheel rises',
    negative: 'falls {} as the wheel rises',
  },
  springForce: { more: '{} stronger', less: '{} weaker' },
  wheelRate: { more: '{} stiffer', less: '{} softer' },
  rideFrequency: { more: '{} faster', less: '{} slower' },
  barMotionRatio: { positive: 'lever end rises {}', negative: 'lever end falls {}' },
  strapLength: LONGER,
  outerAngle: BENT,
  innerAngle: BENT,
  plunge: { positive: 'pushed in {}', negative: 'drawn out {}' },
  lowerBallJoint: TILTED,
  upperBallJoint: TILTED,
  tieRodOuter: TILTED,
  tieRodInner: TILTED,
  innerSteer: STEERS,
  outerSteer: STEERS,
  ackermann: { positive: 'inner wheel leads {}', negative: 'outer wheel leads {}' },
  turningCircle: { more: '{} wider', less: '{} tighter' },
  wheelGap: APART,
  tyreGap: APART,
};

/**
 * What the value is beside the base, in words. `base` and `value` as they are shown, so that their signs are those a
 * person reads; `amount` is the unsigned difference with its unit, null where it reads as nothing.
 */
export function differenceWords(
  key: ComparedKey,
  base: number,
  value: number,
  amount: string | null,
): string {
  if (amount === null || base === value) return 'the same';
  const phrase = PHRASES[key];
  if ('more' in phrase)
    return (value > base ? phrase.more : phrase.less).replace('{}', () => amount);
  const words = value > 0 || (value === 0 && base > 0) ? phrase.positive : phrase.negative;
  if (base * value < 0) return `${words.replace(/ ?\{\} ?/, ' ').trim()} instead, ${amount} apart`;
  const degree = Math.abs(value) > Math.abs(base) ? 'more' : 'less';
  return words.replace('{}', () => `${amount} ${degree}`);
}
