/** Whether the names a model uses (obstacles, pairs of parts, paths to points) are names of something. */
import { COORDINATES, measuredNumbers } from '../measured.ts';
import type { Model } from '../model.ts';
import { itemPath, keyPath, quoted } from '../read/failure.ts';
import { nearestKey } from '../read/nearest.ts';
import { refuse } from '../read/reader.ts';
import { walk } from '../read/table.ts';

/** Names of the parts that can be paired, in the order of the format's description; obstacles add their own. */
export const PART_NAMES = [
  'wheel',
  'tyre',
  'tieRod',
  'upperArm',
  'lowerArm',
  'coilover',
  'antiRollBarLink',
  'halfShaft',
  'knuckle',
  'brake',
] as const;

/** Names of everything in a model that clearances are stated between. */
export function partNames(model: Model): readonly string[] {
  return [...PART_NAMES, ...(model.obstacles ?? []).map(({ name }) => name)];
}

/**
 * The two names of a key such as "tieRod/wheel", in the key's order; undefined when it is no such key. An obstacle's own name may
 * hold a slash, so every slash is tried as the one between.
 */
export function splitPair(
  key: string,
  names: ReadonlySet<string>,
): readonly [string, string] | undefined {
  for (let slash = key.indexOf('/'); slash >= 0; slash = key.indexOf('/', slash + 1)) {
    const [first, second] = [key.slice(0, slash), key.slice(slash + 1)];
    if (names.has(first) && names.has(second)) return [first, second];
  }
  return undefined;
}

/** Every point of the model by its path, such as `lowerArm.frontPivot` or `tieRod.bends[0]`. */
export function pointPaths(model: Model): readonly string[] {
  const paths: string[] = [];
  walk(model, (_value, path, reader) => {
    if (reader.isPoint) paths.push(path);
  });
  return paths;
}

function question(key: string, known: readonly string[]): string {
  const meant = nearestKey(key, known);
  return meant === undefined ? '' : `; did you mean ${quoted(meant)}?`;
}

function checkObstacles(model: Model): void {
  const seen = new Map<string, number>();
  (model.obstacles ?? []).forEach(({ name }, index) => {
    const path = `obstacles[${index}].name`;
    if ((PART_NAMES as readonly string[]).includes(name)) {
      refuse(path, `${quoted(name)}, the name of a part`, 'a name of its own');
    }
    const first = seen.get(name);
    if (first !== undefined) {
      refuse(path, `${quoted(name)}, the name of obstacles[${first}] too`, 'a name of its own');
    }
    seen.set(name, index);
  });
}

const WANTED_PAIR = '"default" or "partA/partB"';

/** The two parts of a pair of the model, in the key's order. */
function checkPair(
  key: string,
  names: ReadonlySet<string>,
  path: string,
  wanted: string,
): readonly [string, string] {
  const pair = splitPair(key, names);
  if (pair && pair[0] !== pair[1]) return pair;
  if (pair) return refuse(path, 'a part paired with itself', 'two different parts');
  const known = [...names];
  const stranger = key.split('/').find((name) => !names.has(name));
  if (!key.includes('/') || stranger === undefined) {
    return refuse(path, 'an unknown key', `${wanted}${question(key, ['default'])}`);
  }
  return refuse(
    path,
    `no part or obstacle named ${quoted(stranger)}`,
    `${wanted}${question(stranger, known)}`,
  );
}

function checkRequired(model: Model): void {
  const names = new Set(partNames(model));
  const seen = new Map<string, string>();
  for (const key of Object.keys(model.required ?? {})) {
    if (key === 'default') continue;
    const path = keyPath('required', key);
    const identity = JSON.stringify([...checkPair(key, names, path, WANTED_PAIR)].sort());
    const first = seen.get(identity);
    if (first !== undefined) {
      refuse(path, `the pair of ${quoted(first)} again`, 'each pair once');
    }
    seen.set(identity, key);
  }
}

function checkUnwatched(model: Model): void {
  const names = new Set(partNames(model));
  const seen = new Set<string>();
  (model.unwatched ?? []).forEach((key, index) => {
    const path = itemPath('unwatched', index);
    if (!key.includes('/')) refuse(path, `no pair: ${quoted(key)}`, '"partA/partB"');
    const identity = JSON.stringify([...checkPair(key, names, path, '"partA/partB"')].sort());
    if (seen.has(identity)) refuse(path, `the pair ${quoted(key)} again`, 'each pair once');
    seen.add(identity);
  });
}

/** A path with every index written the same way: `tieRod.bends.0` for `tieRod.bends[0]`. */
export function plainPath(path: string): string {
  return path.replace(/\[(\d+)\]/g, '.$1');
}

/** Everything that may have an uncertainty of its own, as `tolerance` names it: points, single coordinates, other measured numbers. */
function measuredPaths(model: Model): readonly string[] {
  return [
    ...pointPaths(model).flatMap((path) => [path, ...COORDINATES.map((axis) => `${path}.${axis}`)]),
    ...measuredNumbers(model).map(({ path }) => path),
  ];
}

function checkTolerance(model: Model): void {
  if (!model.tolerance) return;
  const paths = measuredPaths(model);
  const known = new Map(paths.map((path) => [plainPath(path), path]));
  const seen = new Set<string>();
  for (const key of Object.keys(model.tolerance)) {
    if (key === 'default') continue;
    const path = keyPath('tolerance', key);
    const plain = plainPath(key);
    if (!known.has(plain)) {
      const wanted = '"default" or the path of a point or measured number in this model';
      refuse(path, 'no such point', `${wanted}${question(key, ['default', ...paths])}`);
    }
    if (seen.has(plain)) refuse(path, 'the same point again', 'each point once');
    seen.add(plain);
  }
}

/** Refuses a model in which a name is taken twice or means nothing. */
export function checkNames(model: Model): void {
  checkObstacles(model);
  checkRequired(model);
  checkUnwatched(model);
  checkTolerance(model);
}
