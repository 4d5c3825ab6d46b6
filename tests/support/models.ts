import { readFileSync } from 'node:fs';
import { type Model, parseModel, readModel } from '../../solver/index.ts';

/** File names of the shipped models. */
export const SHIPPED = [
  'half-ton-factory',
  'half-ton-long-travel',
  'planar-equal-arms',
  'rear-steer-saloon',
  'tall-knuckle-crossover',
] as const;

/** A shipped model by its file name without ending. */
export function shipped(name: (typeof SHIPPED)[number]): Model {
  const path = new URL(`../../models/${name}.json`, import.meta.url);
  const read = parseModel(readFileSync(path, 'utf8'), `${name}.json`);
  if (!read.ok) throw new Error(`${name}: ${read.error.path}: ${read.error.wanted}`);
  return read.model;
}

/** A sound model, or the reason why it is none as an error. */
export function sound(value: unknown): Model {
  const read = readModel(value, 'test');
  if (!read.ok)
    throw new Error(`${read.error.path}: found ${read.error.found}, wanted ${read.error.wanted}`);
  return read.model;
}
