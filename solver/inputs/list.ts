/** The measured inputs of a model, in the format's order. */
import { COORDINATES, type MeasuredNumber, measuredNumbers } from '../model/measured.ts';
import type { Model } from '../model/model.ts';
import { plainPath, pointPaths } from '../model/sound/names.ts';
import type { Input } from './input.ts';
import { COORDINATE_WORDS, groupOf, numberLabel, pointLabel } from './words.ts';

/** Points that shape tubes and surroundings and carry nothing that is measured in a pose. */
const SHAPES_ONLY = /^(obstacles|knuckle)\.|\.(legs|bends)\./;

function coordinates(model: Model, path: string): Input[] {
  const label = pointLabel(model, path);
  return ([0, 1, 2] as const).map((component) => ({
    key: `${path}.${COORDINATES[component]}`,
    path,
    component,
    unit: 'mm',
    group: groupOf(path),
    pointLabel: label,
    label: `${label}, ${COORDINATE_WORDS[component]}`,
    isMeasured: !SHAPES_ONLY.test(path),
  }));
}

function numberInput(number: MeasuredNumber): Input {
  const label = numberLabel(number);
  return {
    key: number.path,
    path: number.path,
    component: null,
    unit: number.unit,
    group: groupOf(number.path),
    pointLabel: label,
    label,
    isMeasured: number.path !== 'strap.length',
  };
}

const _inputs = new WeakMap<Model, readonly Input[]>();

/** Every measured input of a model: the coordinates of all points, then the other measured numbers. */
export function inputsOf(model: Model): readonly Input[] {
  const known = _inputs.get(model);
  if (known !== undefined) return known;
  const inputs = [
    ...pointPaths(model).flatMap((path) => coordinates(model, plainPath(path))),
    ...measuredNumbers(model).map(numberInput),
  ];
  _inputs.set(model, inputs);
  return inputs;
}

/** The input of a key such as "tieRod.inner.z"; undefined where the model has none. */
export function inputOf(model: Model, key: string): Input | undefined {
  return inputsOf(model).find((input) => input.key === key);
}
