/** The table of the whole model file, one row a key, in the order of the format's description. */
import { measuredUnitWords } from '../measured.ts';
import type { Model, Target, Travel, Vehicle } from '../model.ts';
import { hub, knuckle, lowerArm, steering, tieRod, upperArm } from './corner.ts';
import { itemPath, keyPath } from './failure.ts';
import {
  antiRollBar,
  brake,
  coilover,
  halfShaft,
  obstacle,
  obstacleTable,
  strap,
  tyre,
  wheel,
} from './fitted.ts';
import { keyed, list, object, optional, type Reader, required } from './reader.ts';
import { anyNumber, between, notNegative, positive, text, word } from './values.ts';

/** The format this program reads and writes. */
export const FORMAT = 'armscribe/1';

export const format: Reader<Model['format']> = word(FORMAT);

const travel: Reader<Travel> = object<Travel>('the travel: an object with bump, droop', {
  bump: required(positive('mm')),
  droop: required(positive('mm')),
  ride: optional(anyNumber),
});

type Stops = NonNullable<Model['stops']>;

const stops: Reader<Stops> = object<Stops>('the stops: an object', {
  bump: optional(positive('mm')),
  droop: optional(positive('mm')),
});

/** Numbers under names that only the rest of the model can judge. */
function named(
  wanted: string,
  unitOf: (key: string) => string,
): Reader<Readonly<Record<string, number>>> {
  return {
    wanted,
    read: (value, path) =>
      Object.fromEntries(
        Object.entries(keyed(value, path, wanted)).map(([key, item]) => [
          key,
          notNegative(unitOf(key)).read(item, keyPath(path, key)),
        ]),
      ),
  };
}

const vehicle: Reader<Vehicle> = object<Vehicle>(
  'a vehicle: an object with wheelbase, cgHeight, frontBrakeShare, frontDriveShare, cornerMass',
  {
    wheelbase: required(positive('mm')),
    cgHeight: required(positive('mm')),
    frontBrakeShare: required(between(0, 1)),
    frontDriveShare: required(between(0, 1)),
    cornerMass: required(positive('kg')),
  },
);

const target: Reader<Target> = object<Target>('a target: an object with value, plusMinus', {
  value: required(anyNumber),
  plusMinus: required(notNegative('degrees')),
});

type Targets = NonNullable<Model['targets']>;

const targets: Reader<Targets> = object<Targets>('the targets: an object', {
  camber: optional(target),
  caster: optional(target),
  toe: optional(target),
});

export const model: Reader<Model> = object<Model>('a model: an object in { }', {
  format: required(format),
  name: required(text),
  notes: optional(text),
  lowerArm: required(lowerArm),
  upperArm: required(upperArm),
  tieRod: required(tieRod),
  steering: optional(steering),
  hub: required(hub),
  wheel: required(wheel),
  tyre: required(tyre),
  knuckle: optional(knuckle),
  brake: optional(brake),
  coilover: optional(coilover),
  antiRollBar: optional(antiRollBar),
  halfShaft: optional(halfShaft),
  strap: optional(strap),
  travel: required(travel),
  stops: optional(stops),
  obstacles: optional(list('a list of obstacles', obstacle)),
  required: optional(named('the least clearances wanted: an object of pairs of parts', () => 'mm')),
  unwatched: optional(list('a list of pairs "partA/partB"', text)),
  tolerance: optional(named('the uncertainties: an object of paths to points', measuredUnitWords)),
  vehicle: optional(vehicle),
  targets: optional(targets),
});

/** A value of the model met on a walk along its table. */
export type Visit = (value: unknown, path: string, reader: Reader<unknown>) => void;

/** Visits every value of a read model that is there, in the table's order, parents first. */
export function walk(
  value: unknown,
  visit: Visit,
  path = '',
  reader: Reader<unknown> = model,
): void {
  visit(value, path, reader);
  if (Array.isArray(value) && reader.items) {
    for (const [index, item] of value.entries()) {
      walk(item, visit, itemPath(path, index), tableOf(item, reader.items));
    }
  } else if (reader.fields) {
    for (const [key, field] of Object.entries(reader.fields)) {
      const item = (value as Record<string, unknown>)[key];
      if (item !== undefined) walk(item, visit, keyPath(path, key), field.reader);
    }
  }
}

/** The reader that knows an item's keys: an obstacle's depend on its shape. */
export function tableOf(item: unknown, reader: Reader<unknown>): Reader<unknown> {
  return reader === obstacle ? obstacleTable((item as { shape: 'tube' }).shape) : reader;
}
