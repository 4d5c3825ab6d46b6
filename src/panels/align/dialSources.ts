/** The dials of a model: its cams, in degrees, and its tie rod, in turns. */
import type { Model } from '../../../solver/index.ts';
import { camAngle, tieRodChange } from '../../../solver/model/defaults.ts';
import { documentStore, view } from '../../state/bench.ts';
import { type Entered, enteredNumber } from '../../words/entry.ts';
import { fixed, length } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { withValue } from '../points/place.ts';
import type { DialSource } from './dial.ts';
import { camOn, camPath, camShift, camWays, counted, type Pivot } from './hardware.ts';

function model(): Model {
  return documentStore.getState().model;
}

/** A typed number of degrees or turns, or a count of marks or flats behind which that word stands. */
function enteredCount(text: string, one: string, divisions: number | null, perTurn: number) {
  const counts = new RegExp(`^(.*?) *${one}s?$`, 'i').exec(text.trim());
  if (counts === null) return enteredNumber(text.replace(/ *turns?$/i, ''));
  if (divisions === null) {
    const why = `The model does not say how many ${one}s make a turn: write it under “${one}s”.`;
    return { ok: false, why } satisfies Entered;
  }
  const entered = enteredNumber(counts[1] ?? '');
  return entered.ok ? { ...entered, value: (entered.value * perTurn) / divisions } : entered;
}

const BOTH_SIDES = 90;

/** The dial of the cam on a pivot, as it is in the model now. */
export function camSource(pivot: Pivot, marks: number | null): DialSource {
  const read = () => camAngle(camOn(model(), pivot));
  return {
    label: `${pivot.name} cam`,
    read,
    write: (angle) => editModel((now) => withValue(now, `${camPath(pivot)}.angle`, angle)),
    least: -BOTH_SIDES,
    most: BOTH_SIDES,
    perTurn: 360,
    divisions: marks,
    step: 1,
    fine: 0.1,
    coarse: marks === null ? 15 : Math.max(15, 720 / marks),
    stops: 'A cam’s working range ends at 90°: past it the pivot comes back again.',
    figure: (angle) => fixed(angle, 1),
    unit: '°',
    words: (angle) => camWords(pivot, angle),
    effect: (angle) => camEffect(pivot, angle),
    enter: (text) => enteredCount(text, 'mark', marks, 360),
  };
}

function camWords(pivot: Pivot, angle: number): string {
  const cam = camOn(model(), pivot);
  if (cam === undefined) return '';
  if (Math.abs(angle) < 0.05) return 'in the middle';
  const way = camWays(cam)[angle > 0 ? 0 : 1];
  const turn = `${fixed(Math.abs(angle), 1)}°`;
  const { marks } = cam;
  const size = marks === undefined ? turn : counted((angle * marks) / 360, 'mark');
  return `${size} ${way}${Math.abs(angle) > BOTH_SIDES ? ', past its range' : ''}`;
}

function camEffect(pivot: Pivot, angle: number): string {
  const cam = camOn(model(), pivot);
  if (cam === undefined) return '';
  const shift = camShift(cam, angle);
  if (Math.abs(shift) < 0.005) return 'pivot as measured';
  const { unit } = view.getState();
  const way = camWays(cam)[shift >= 0 ? 0 : 1];
  return `pivot ${length(Math.abs(shift), unit === 'mm' ? 'mm' : 'inch', 2)} ${way}`;
}

/** The dial of the tie rod's adjuster; it can be turned once its pitch is stated. */
export function rodSource(flats: number | null): DialSource {
  return {
    label: 'Tie rod',
    read: () => model().tieRod.turns ?? 0,
    write: (turns) => editModel((now) => withValue(now, 'tieRod.turns', turns)),
    least: Number.NEGATIVE_INFINITY,
    most: Number.POSITIVE_INFINITY,
    perTurn: 1,
    divisions: flats,
    step: 0.05,
    fine: 0.01,
    coarse: 1,
    stops: '',
    figure: (turns) => fixed(turns, 2),
    unit: 'turns',
    words: rodWords,
    effect: () => {
      const change = tieRodChange(model().tieRod);
      const { unit } = view.getState();
      const size = length(Math.abs(change), unit === 'mm' ? 'mm' : 'inch', 2);
      return change === 0 ? '' : `rod ${size} ${change > 0 ? 'longer' : 'shorter'}`;
    },
    enter: (text) => enteredCount(text, 'flat', flats, 1),
  };
}

function rodWords(turns: number): string {
  if (Math.abs(turns) < 0.005) return 'as measured';
  const { flats } = model().tieRod;
  const size =
    flats === undefined ? `${fixed(Math.abs(turns), 2)} turns` : counted(turns * flats, 'flat');
  return `${size} ${turns > 0 ? 'longer' : 'shorter'}`;
}
