/** The three lengths of the transport: travel, rack, and the lift that sets the ride height. */
import type { Model } from '../../solver/index.ts';
import { rackRange } from '../../solver/model/defaults.ts';
import { documentStore, inputs, view } from '../state/bench.ts';
import { travelRange } from '../state/inputs.ts';
import { liftedBy, liftOf, liftRange } from '../state/ride.ts';
import { steerSense } from '../state/steerSense.ts';
import { length } from '../words/format.ts';
import type { SlideSource } from './Slide.tsx';

/** The range of the model it was last asked for: one array per model, none per frame. */
function perModel<T>(of: (model: Model) => T): () => T {
  let last: Model | null = null;
  let value: T | undefined;
  return () => {
    const now = model();
    if (now !== last || value === undefined) {
      last = now;
      value = of(now);
    }
    return value;
  };
}

function model(): Model {
  return documentStore.getState().model;
}

function sense(value: number, positive: string, negative: string, none: string): string {
  if (Math.abs(value) < 0.05) return none;
  return value > 0 ? positive : negative;
}

export const TRAVEL_SLIDE: SlideSource = {
  label: 'Travel',
  read: () => inputs.getState().travel,
  write: inputs.setTravel,
  range: perModel(travelRange),
  words: (travel) => sense(travel, 'wheel up: bump', 'wheel down: droop', 'design height'),
  stops: ['full droop', 'full bump'],
};

export const RACK_SLIDE: SlideSource = {
  label: 'Rack',
  read: () => inputs.getState().rack,
  write: inputs.setRack,
  range: perModel((of) => rackRange(of.steering)),
  words: (rack) => sense(rack, 'to the left', 'to the right', 'centred'),
  ends: ['left lock', 'right lock'],
  isReversed: () => steerSense() === 1,
  stops: ['the steering limit', 'the steering limit'],
};

function liftWords(lift: number): string {
  const { unit } = view.getState();
  const travel = `travel ${length(-lift, unit, 0)}`;
  return sense(lift, `a lift: ${travel}`, `a drop: ${travel}`, 'as designed');
}

export const LIFT_SLIDE: SlideSource = {
  label: 'Lift',
  hint: 'A lift of 50 mm lowers the wheel in the body’s frame: travel −50. It adds neither travel nor bump clearance. A drop is a negative lift.',
  read: () => liftOf(model()),
  write: (lift) => {
    documentStore.edit((of) => liftedBy(of, lift));
    inputs.setTravel(-liftOf(model()));
  },
  range: perModel((of) => {
    const [drop, lift] = liftRange(of);
    const now = liftOf(of);
    return [Math.min(drop, now), Math.max(lift, now)];
  }),
  words: liftWords,
  stops: ['full bump', 'full droop'],
  begin: documentStore.beginGesture,
  end: documentStore.endGesture,
  cancel: documentStore.cancelGesture,
};
