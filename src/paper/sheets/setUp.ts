/** The set-up sheet: reference lengths, heights, stops and strap, cams, shims and the tie rod's thread. */
import {
  assemble,
  fittingsOf,
  type HardwareName,
  hardwareWords,
  Slot,
  type Vector3,
  withSettings,
} from '../../../solver/index.ts';
import { steeringDirection, tieRodChange } from '../../../solver/model/defaults.ts';
import { radians } from '../../../solver/units.ts';
import { fixed } from '../../words/format.ts';
import {
  BLANK,
  type Block,
  type Cell,
  figure,
  heading,
  list,
  paragraph,
  tableBlocks,
} from '../block.ts';
import { cornerView } from '../figures/cornerView.ts';
import { cornerOutline, pointIn } from '../figures/outline.ts';
import { figureText, lengthText, NO_NUMBER, smallText } from '../figureWords.ts';
import { roomOf, type Sheet, sheetPages, widthOf } from '../page.ts';
import { type PaperSource, type Reading, readingAt } from '../source.ts';
import { setByWords, standing } from '../standing.ts';

function distance(a: Vector3, b: Vector3): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

interface Length {
  readonly name: string;
  readonly measured: number;
  readonly set: number;
}

/** Lengths between centres, in the file's points and in the set pose. */
export function referenceLengths({ model, corner }: PaperSource, { data }: Reading): Length[] {
  const at = (slot: number): Vector3 => pointIn(data, slot);
  const { pivots } = corner.linkage;
  const [lower, upper, outer] = [at(Slot.lower), at(Slot.upper), at(Slot.outer)];
  const arms = (['lower', 'upper'] as const).flatMap((name): Length[] => {
    const { frontPivot, rearPivot, ballJoint } = model[`${name}Arm`];
    const [front, rear] = [pivots[`${name}Front`], pivots[`${name}Rear`]];
    const ball = name === 'lower' ? lower : upper;
    const row = (what: string, measured: number, set: number): Length => ({
      name: `${name === 'lower' ? 'Lower' : 'Upper'} arm, ${what}`,
      measured,
      set,
    });
    return [
      row('pivot to pivot', distance(frontPivot, rearPivot), distance(front, rear)),
      row('front pivot to ball joint', distance(frontPivot, ballJoint), distance(front, ball)),
      row('rear pivot to ball joint', distance(rearPivot, ballJoint), distance(rear, ball)),
    ];
  });
  const { lowerArm, upperArm, tieRod } = model;
  return [
    ...arms,
    {
      name: 'Ball joint to ball joint',
      measured: distance(lowerArm.ballJoint, upperArm.ballJoint),
      set: distance(lower, upper),
    },
    {
      name: 'Lower ball joint to tie rod end',
      measured: distance(lowerArm.ballJoint, tieRod.outer),
      set: distance(lower, outer),
    },
    {
      name: 'Tie rod, end to end',
      measured: distance(tieRod.inner, tieRod.outer),
      set: distance(at(Slot.inner), outer),
    },
    ...partLengths({ model }, at),
  ];
}

function partLengths(
  { model }: Pick<PaperSource, 'model'>,
  at: (slot: number) => Vector3,
): Length[] {
  const { coilover, antiRollBar, halfShaft } = model;
  const out: Length[] = [];
  if (coilover !== undefined) {
    out.push({
      name: 'Coilover, mounting to mounting',
      measured: distance(coilover.top, coilover.bottom),
      set: distance(coilover.top, at(Slot.damperBottom)),
    });
  }
  if (antiRollBar !== undefined) {
    const length = distance(antiRollBar.leverEnd, antiRollBar.link);
    out.push({ name: 'Drop link, joint to joint', measured: length, set: length });
  }
  if (halfShaft !== undefined) {
    out.push({
      name: 'Half-shaft, joint to joint',
      measured: distance(halfShaft.inner, halfShaft.outer),
      set: distance(halfShaft.inner, at(Slot.shaftOuter)),
    });
  }
  return out;
}

function lengthBlocks(source: PaperSource, set: Reading): Block[] {
  const say = (mm: number): string => lengthText(mm, source.settings.unit);
  const rows = referenceLengths(source, set).map(({ name, measured, set: now }): Cell[] => [
    name,
    say(measured),
    say(now),
    BLANK,
  ]);
  return [
    heading('Reference lengths, centre to centre'),
    ...tableBlocks(
      {
        caption: 'Reference lengths',
        heads: ['Between centres', 'As measured', 'Set, at ride height', 'On the vehicle'],
        rows,
        widths: [0.4, 0.2, 0.2, 0.2],
      },
      roomOf(source.settings.paper),
    ),
  ];
}

function placeBlocks(source: PaperSource, { data }: Reading): Block[] {
  const { pivots } = source.corner.linkage;
  const say = (mm: number): string => lengthText(mm, source.settings.unit);
  const at = (slot: number): Vector3 => pointIn(data, slot);
  const [centre, ground] = [at(Slot.centre), data[Slot.contact + 2]!];
  const points: readonly (readonly [string, Vector3])[] = [
    ['Lower arm, front pivot', pivots.lowerFront],
    ['Lower arm, rear pivot', pivots.lowerRear],
    ['Lower ball joint', at(Slot.lower)],
    ['Upper arm, front pivot', pivots.upperFront],
    ['Upper arm, rear pivot', pivots.upperRear],
    ['Upper ball joint', at(Slot.upper)],
    ['Tie rod, inner end', at(Slot.inner)],
    ['Tie rod, outer end', at(Slot.outer)],
    ['Wheel centre', centre],
  ];
  const rows = points.map(([name, [x, y, z]]): Cell[] => [
    name,
    say(z - ground),
    BLANK,
    say(y),
    BLANK,
    say(x - centre[0]),
    BLANK,
  ]);
  return [
    heading('Where the centres stand at ride height'),
    ...tableBlocks(
      {
        caption: 'Centres at ride height',
        heads: [
          'Centre',
          'Above ground',
          'Found',
          'From centreline',
          'Found',
          'Ahead of wheel centre (− behind)',
          'Found',
        ],
        rows,
        widths: [0.25, 0.14, 0.11, 0.14, 0.11, 0.14, 0.11],
      },
      roomOf(source.settings.paper),
    ),
  ];
}

/** Rows of what limits travel, each worked out at its own height straight ahead. */
export function stopRows(source: PaperSource): readonly (readonly [string, string, string])[] {
  const { model, corner, ride, cycle, settings } = source;
  const say = (mm: number): string => smallText(mm, settings.unit);
  const damper = (travel: number): number =>
    readingAt(corner, travel, 0)?.at('damperLength') ?? Number.NaN;
  const travelOf = (height: string): number =>
    cycle.heights.find((each) => each.height === height)?.travel ?? Number.NaN;
  const [bump, droop] = [travelOf('fullBump'), travelOf('fullDroop')];
  const rows: [string, string, string][] = cycle.heights
    .filter(({ height }) => height !== 'ride' && height !== 'midDroop')
    .map(({ label, travel, because }) => [
      `Wheel from ride height to ${label}`,
      `${say(Math.abs(travel - ride))} ${travel >= ride ? 'up' : 'down'}`,
      setByWords(because),
    ]);
  const { stops, strap, coilover } = model;
  if (coilover !== undefined && stops?.bump !== undefined) {
    rows.push([
      'Bump stop gap, along the coilover',
      say(damper(ride) - damper(stops.bump)),
      'for a stop on its shaft: how far the coilover shortens from ride height to touching',
    ]);
  }
  if (coilover?.minLength !== undefined) {
    rows.push([
      'Coilover shaft left at full bump',
      say(damper(bump) - coilover.minLength),
      `length there ${say(damper(bump))}`,
    ]);
  }
  if (coilover?.maxLength !== undefined) {
    rows.push([
      'Coilover left at full droop',
      say(coilover.maxLength - damper(droop)),
      `length there ${say(damper(droop))}`,
    ]);
  }
  if (strap !== undefined) {
    const slack = strap.length - (source.set?.at('strapLength') ?? Number.NaN);
    rows.push([
      'Strap, length when tight',
      say(strap.length),
      `${say(slack)} slack at ride height`,
    ]);
  }
  return rows;
}

function stopBlocks(source: PaperSource): Block[] {
  return [
    heading('Stops, strap and coilover, straight ahead'),
    ...tableBlocks(
      {
        caption: 'Stops, strap and coilover',
        heads: ['What', 'Set to', 'Found', 'Set by'],
        rows: stopRows(source).map(([what, value, why]): Cell[] => [what, value, BLANK, why]),
        widths: [0.32, 0.16, 0.14, 0.38],
        words: [3],
      },
      roomOf(source.settings.paper),
    ),
  ];
}

function cap(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function way(direction: Vector3, shift: number): string {
  const [x, y, z] = direction.map((part) => part * Math.sign(shift)) as [number, number, number];
  const sizes = [Math.abs(x), Math.abs(y), Math.abs(z)];
  const main = sizes.indexOf(Math.max(...sizes));
  if (main === 1) return y > 0 ? 'outboard' : 'inboard';
  if (main === 0) return x > 0 ? 'forward' : 'rearward';
  return z > 0 ? 'up' : 'down';
}

/** Rows of cams and shims: how they are set, in counts where there are any, and where that puts the pivot. */
export function hardwareRows({ model, settings }: PaperSource): Cell[][] {
  return fittingsOf(model).map(({ name, kind, setting, step, reach, direction }) => {
    const shift = kind === 'cam' ? reach * Math.sin(radians(setting)) : setting;
    const set =
      kind === 'cam'
        ? figureText('degree', setting, settings.unit)
        : smallText(setting, settings.unit);
    const unit = kind === 'cam' ? 'marks' : 'shims';
    const counts = step === null ? 'not stated' : `${fixed(Math.abs(setting) / step, 1)} ${unit}`;
    const pivot =
      Math.abs(shift) < 5e-4
        ? 'in the middle'
        : `${smallText(Math.abs(shift), settings.unit)} ${way(direction, shift)}`;
    return [
      cap(hardwareWords(name as HardwareName)),
      set,
      counts,
      kind === 'shim' && shift === 0 ? 'none' : pivot,
      BLANK,
    ];
  });
}

/** What one more turn of the tie rod does to this wheel's toe, degrees, as the corner stands; NaN without a pitch. */
export function toePerTurn({ model, ride, set }: PaperSource): number {
  if (model.tieRod.pitch === undefined || set === null) return Number.NaN;
  const turned = withSettings(model, { tieRodTurns: (model.tieRod.turns ?? 0) + 1 });
  const after = readingAt(assemble(turned), ride, 0);
  return (after?.at('toe') ?? Number.NaN) - set.at('toe');
}

function threadWords(source: PaperSource): string[] {
  const { model, settings } = source;
  const { pitch, turns = 0, flats } = model.tieRod;
  if (pitch === undefined) return ['Tie rod: the model states no pitch of its thread.'];
  const change = toePerTurn(source);
  const toe = (degrees: number): string =>
    Number.isFinite(degrees)
      ? `${figureText('degree', Math.abs(degrees), settings.unit)} of toe ${degrees > 0 ? 'in' : 'out'}`
      : NO_NUMBER;
  const flat =
    flats === undefined
      ? ''
      : ` A flat is a ${flats}th of it: ${fixed(Math.abs(change) / flats, 3)}°.`;
  return [
    `Tie rod: ${smallText(pitch, settings.unit)} longer a turn (all its threads together); ${turns === 0 ? 'set as it was measured' : `set ${fixed(Math.abs(turns), 2)} turns ${turns < 0 ? 'shorter' : 'longer'} than measured, ${smallText(Math.abs(tieRodChange(model.tieRod)), settings.unit)}`}. One more turn longer: ${toe(change)} on this wheel.${flat}`,
  ];
}

function hardwareBlocks(source: PaperSource): Block[] {
  const rows = hardwareRows(source);
  const [x, , z] = steeringDirection(source.model.steering);
  const straight =
    x === 0 && z === 0
      ? []
      : ['The rack does not lie straight across the vehicle: the right side is set by its own.'];
  const words = list([
    ...(rows.length === 0 ? ['Cams and shims: the model states none.'] : []),
    ...threadWords(source),
    ...straight,
  ]);
  return [
    heading('Cams, shims and tie rod thread'),
    ...tableBlocks(
      {
        caption: 'Cams and shims',
        heads: ['Where', 'Set to', 'Counted from 0', 'Pivot moved', 'On the vehicle'],
        rows,
        widths: [0.3, 0.15, 0.18, 0.2, 0.17],
      },
      roomOf(source.settings.paper),
    ),
    words,
  ];
}

export function setUpSheet(source: PaperSource): Sheet {
  const { set, settings, ride } = source;
  const title = 'Set-up sheet';
  if (set === null) {
    const words = paragraph(
      'The corner cannot be assembled at its ride height: there is nothing to set up.',
    );
    return sheetPages('set-up', title, source, [words, ...standing(source)]);
  }
  const width = widthOf(settings.paper);
  const outline = cornerOutline(source, set);
  const view = cornerView(outline, 'front', settings.unit, width, 66, true);
  return sheetPages('set-up', title, source, [
    paragraph(
      `At ride height: travel ${smallText(ride, settings.unit)} from the pose the points were measured in, rack straight ahead, cams, shims and tie rod as they are set. Ball centres count, not studs or nuts.`,
    ),
    figure(view, 66),
    ...lengthBlocks(source, set),
    ...placeBlocks(source, set),
    ...stopBlocks(source),
    ...hardwareBlocks(source),
    ...standing(source),
  ]);
}
