/** Every number, choice and name of a model as a field that can be edited, section by section. */
import type { Model } from '../../../solver/index.ts';
import { walk } from '../../../solver/model/read/table.ts';
import { plainPath } from '../../../solver/model/sound/names.ts';
import { hardPoints } from '../../state/points.ts';
import { DEFAULTED } from './defaulted.ts';
import type { ChoiceField, Field, NumbersField, TextField } from './field.ts';
import { valueAt, withValue } from './place.ts';
import {
  directionRow,
  pairRowOf,
  patternOf,
  pointRow,
  type RowSpec,
  specOf,
  turnsRow,
} from './spec.ts';
import { withTyreSize, withWheelDiameter } from './tyre.ts';

const CARRIERS: ChoiceField['options'] = [
  { value: 'lowerArm', label: 'Lower arm' },
  { value: 'upperArm', label: 'Upper arm' },
  { value: 'knuckle', label: 'Knuckle' },
];

const UNITS: ChoiceField['options'] = [
  { value: 'mm', label: 'Millimetres' },
  { value: 'cm', label: 'Centimetres' },
  { value: 'm', label: 'Metres' },
  { value: 'inch', label: 'Inches' },
];

const DIRECTION_LABELS: Readonly<Record<string, string>> = {
  slot: 'cam, slot direction',
  studAxis: 'Stud axis',
  housingAxis: 'Housing axis',
  direction: 'Rack direction',
  innerAxis: 'Inner joint axis',
};

function numbersField(
  path: string,
  row: RowSpec,
  isPoint: boolean,
  get: NumbersField['get'] = (model) => valueAt(model, path) as readonly number[],
): NumbersField {
  const set: NumbersField['set'] = (model, numbers) => withValue(model, path, [...numbers]);
  return { form: 'numbers', path, label: row.label, row, isPoint, get, set };
}

/** Where there may be several of a part, its number stands before the label. */
function placedLabel(path: string, label: string): string {
  const [part, ...rest] = path.split('.');
  const place = Number(part === 'knuckle' ? rest[1] : rest[0]) + 1;
  if (Number.isNaN(place)) return label;
  const name = part === 'knuckle' ? 'Tube' : 'Obstacle';
  return `${name} ${place}: ${label.toLowerCase()}`;
}

function setterOf(path: string): (model: Model, value: number) => Model {
  if (path === 'wheel.diameter') return withWheelDiameter;
  return (model, value) => withValue(model, path, value);
}

function numberField(path: string, read?: (model: Model) => number): NumbersField {
  const spec = specOf(path);
  const set = setterOf(path);
  const label = placedLabel(path, spec.label);
  return {
    form: 'numbers',
    path,
    label,
    row: { label, cells: [{ name: '', title: '', spec }] },
    isPoint: false,
    get: (model) => [read ? read(model) : (valueAt(model, path) as number)],
    set: (model, [value]) => (value === undefined ? model : set(model, value)),
  };
}

function directionLabel(path: string): string {
  const keys = path.split('.');
  const label = DIRECTION_LABELS[keys.at(-1) ?? ''] ?? 'Direction';
  const end = keys.at(-2)?.startsWith('front') === true ? 'Front' : 'Rear';
  if (path.endsWith('Shim.direction')) return `${end} shims, direction`;
  return path.endsWith('.slot') ? `${end} ${label}` : label;
}

/** The row of a list of two or three numbers; the labels of points are those of the handles in the scene. */
function rowField(path: string, size: number, isPoint: boolean, labels: PointLabels): NumbersField {
  if (isPoint) return numbersField(path, pointRow(labels.get(path) ?? path), true);
  if (patternOf(path) === 'obstacles.#.rotation') {
    return numbersField(path, turnsRow(placedLabel(path, 'Turned')), false);
  }
  if (size === 3) return numbersField(path, directionRow(directionLabel(path)), false);
  return numbersField(path, pairRowOf(patternOf(path), Number(path.split('.').at(-1)) + 1), false);
}

type PointLabels = ReadonlyMap<string, string>;

function textField(path: string, value: string): TextField | ChoiceField | null {
  const key = path.split('.').at(-1);
  const get = (model: Model): string => valueAt(model, path) as string;
  const set = (model: Model, text: string): Model => withValue(model, path, text);
  if (key === 'on')
    return { form: 'choice', path, label: 'Lower end on', options: CARRIERS, get, set };
  if (path === 'tyre.size') return { form: 'text', path, label: 'Size', get, set: withTyreSize };
  if (path.startsWith('obstacles.') && key === 'name') {
    const place = Number(path.split('.')[1]) + 1;
    return {
      form: 'text',
      path,
      label: `Obstacle ${place}: name`,
      get,
      set: renamedObstacle(path, value),
    };
  }
  if (path.startsWith('obstacles.') && key === 'file') {
    const place = Number(path.split('.')[1]) + 1;
    return { form: 'text', path, label: `Obstacle ${place}: mesh file`, get, set };
  }
  if (path.startsWith('obstacles.') && key === 'unit') {
    const label = placedLabel(path, 'Unit of the file');
    return { form: 'choice', path, label, options: UNITS, get, set };
  }
  return null;
}

/** Pairs that want a clearance of the obstacle go on meaning it under its new name. */
function renamedObstacle(path: string, before: string): TextField['set'] {
  return (model, text) => {
    const next = withValue(model, path, text);
    if (model.required === undefined) return next;
    const required = Object.entries(model.required).map(([key, value]) => [
      key.startsWith(`${before}/`)
        ? `${text}${key.slice(before.length)}`
        : key.endsWith(`/${before}`)
          ? `${key.slice(0, -before.length)}${text}`
          : key,
      value,
    ]);
    return { ...next, required: Object.fromEntries(required) };
  };
}

const NOT_EDITED = new Set(['format', 'name', 'notes', 'required', 'tolerance']);

function written(model: Model): Field[] {
  const fields: Field[] = [];
  const labels: PointLabels = new Map(
    hardPoints(model).map(({ path, shortLabel }) => [path, shortLabel]),
  );
  let row = '';
  walk(model, (value, bracketed, reader) => {
    const path = plainPath(bracketed);
    if (NOT_EDITED.has(path) || (row !== '' && path.startsWith(`${row}.`))) return;
    if (typeof value === 'number') fields.push(numberField(path));
    if (typeof value === 'string') {
      const field = textField(path, value);
      if (field !== null) fields.push(field);
    }
    if (Array.isArray(value) && value.length > 0 && value.every((n) => typeof n === 'number')) {
      row = path;
      fields.push(rowField(path, value.length, reader.isPoint === true, labels));
    }
  });
  return fields;
}

/** Clearances and uncertainties have keys of the user's own, which may hold dots: they are not set by path. */
function named(model: Model, group: 'required' | 'tolerance'): NumbersField[] {
  return Object.keys(model[group] ?? {}).map((key) => ({
    ...numberField(`${group}.${key}`),
    get: (now: Model) => [now[group]?.[key] ?? 0],
    set: (now: Model, [value]: readonly number[]) =>
      value === undefined ? now : { ...now, [group]: { ...now[group], [key]: value } },
  }));
}

function defaulted(model: Model): NumbersField[] {
  return DEFAULTED.filter(
    ({ path, isShown }) => isShown(model) && valueAt(model, path) === undefined,
  ).map(({ path, read }) => numberField(path, read));
}

const _fields = new WeakMap<Model, readonly Field[]>();

/** Every field of a model, in the order of the format, defaults last in their part. */
export function fieldsOf(model: Model): readonly Field[] {
  const known = _fields.get(model);
  if (known !== undefined) return known;
  const fields = [
    ...written(model),
    ...defaulted(model),
    ...named(model, 'required'),
    ...named(model, 'tolerance'),
  ];
  _fields.set(model, fields);
  return fields;
}
