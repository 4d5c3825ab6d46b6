/** Changes that leave part of the range out: the rack stopped earlier, a stop moved in. */
import type { Corner } from '../corner.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { steerSign } from '../stops/margins.ts';
import { type Change, tidy } from './change.ts';
import type { Moved } from './cure.ts';

/** What is left of a range at the least, mm. */
const LEFT = 5;

function moved(label: string, before: number | null, after: number): Moved {
  return { label, before, after, unit: 'mm' };
}

function rackChange(model: Model, lock: string, ends: readonly ('low' | 'high')[]): Change {
  const [low, high] = rackRange(model.steering);
  const after = (amount: number): readonly [number, number] => [
    ends.includes('low') ? tidy(low + amount) : low,
    ends.includes('high') ? tidy(high - amount) : high,
  ];
  const rooms = ends.map((end) => (end === 'low' ? -low : high));
  return {
    kind: 'rackLimit',
    says: () => ['rack stopped', `earlier at ${lock}`],
    most: Math.min(...rooms) - LEFT,
    at: (amount) => ({ ...model, steering: { ...model.steering, limit: after(amount) } }),
    settings: (amount) => {
      const [least, most] = after(amount);
      return [
        ...(least === low ? [] : [moved('rack limit, least', low, least)]),
        ...(most === high ? [] : [moved('rack limit, greatest', high, most)]),
      ];
    },
    cutsRange: true,
  };
}

/** Either lock stopped earlier, or both alike. */
export function rackChanges(corner: Corner): Change[] {
  const { model } = corner;
  const [low, high] = rackRange(model.steering);
  if (low === high) return [];
  const sign = steerSign(corner);
  return [
    rackChange(model, sign > 0 ? 'right lock' : 'left lock', ['low']),
    rackChange(model, sign > 0 ? 'left lock' : 'right lock', ['high']),
    rackChange(model, 'both locks', ['low', 'high']),
  ];
}

/**
 * A stop moved in, and with it the travel that is looked at: a gap is proven over the travel that the model states. Counted
 * from the end of that travel.
 */
function stopChange(model: Model, end: 'bump' | 'droop'): Change {
  const { travel, stops } = model;
  const ride = rideTravel(travel);
  const room = end === 'bump' ? travel.bump - Math.max(0, ride) : travel.droop + Math.min(0, ride);
  const at = (amount: number): number => tidy(travel[end] - amount);
  const stopAt = (amount: number): number =>
    Math.min(stops?.[end] ?? Number.POSITIVE_INFINITY, at(amount));
  return {
    kind: end === 'bump' ? 'bumpStop' : 'droopStop',
    says: (amount) => [
      `travel in ${end}`,
      stopAt(amount) === stops?.[end] ? 'less: its stop is before that' : 'less, by its stop',
    ],
    most: room - LEFT,
    at: (amount) => ({
      ...model,
      travel: { ...travel, [end]: at(amount) },
      stops: { ...stops, [end]: stopAt(amount) },
    }),
    settings: (amount) => [
      moved(`travel in ${end}`, travel[end], at(amount)),
      moved(`${end} stop`, stops?.[end] ?? null, stopAt(amount)),
    ],
    cutsRange: true,
  };
}

export function stopChanges({ model }: Corner, end: 'bump' | 'droop'): Change[] {
  return [stopChange(model, end)];
}
