/** Tables of the parts fitted to the corner: wheel, tyre, brake, spring, bar, shaft, strap, obstacles. One row a key of the format. */
import type {
  AntiRollBar,
  Brake,
  Carrier,
  Coilover,
  HalfShaft,
  MeshUnit,
  Obstacle,
  Strap,
  Tyre,
  Wheel,
} from '../model.ts';
import { polyline } from './corner.ts';
import { keyPath } from './failure.ts';
import {
  keyed,
  object,
  optional,
  own,
  pair,
  type Reader,
  refuse,
  refuseValue,
  required,
} from './reader.ts';
import {
  anyNumber,
  direction,
  limitAngle,
  notNegative,
  point,
  positive,
  section,
  text,
  turns,
  word,
} from './values.ts';

export const wheel: Reader<Wheel> = object<Wheel>(
  'a wheel: an object with diameter, width, offset',
  {
    diameter: required(positive('inch code')),
    width: required(positive('inch code')),
    offset: required(anyNumber),
    spacer: optional(notNegative('mm')),
    section: optional(section),
    disc: optional(section),
    weights: optional(section),
    thickness: optional(positive('mm')),
    mass: optional(positive('kg')),
  },
);

export const tyre: Reader<Tyre> = object<Tyre>(
  'a tyre: an object with size, or with diameter and width',
  {
    size: optional(text),
    diameter: optional(positive('mm')),
    width: optional(positive('mm')),
    loadedRadius: optional(positive('mm')),
  },
);

export const brake: Reader<Brake> = object<Brake>('a brake: an object with section', {
  section: required(section),
});

const carrier: Reader<Carrier> = word<Carrier>('lowerArm', 'upperArm', 'knuckle');

export const coilover: Reader<Coilover> = object<Coilover>(
  'a coilover: an object with top, bottom',
  {
    top: required(point),
    bottom: required(point),
    on: optional(carrier),
    diameter: optional(positive('mm')),
    minLength: optional(positive('mm')),
    maxLength: optional(positive('mm')),
    springRate: optional(positive('N/mm')),
    designForce: optional(anyNumber),
  },
);

export const antiRollBar: Reader<AntiRollBar> = object<AntiRollBar>(
  'an anti-roll bar: an object with axis, leverEnd, link',
  {
    axis: required(pair('two points [x, y, z] (mm)', point)),
    leverEnd: required(point),
    link: required(point),
    on: optional(carrier),
    diameter: optional(positive('mm')),
    linkDiameter: optional(positive('mm')),
  },
);

export const halfShaft: Reader<HalfShaft> = object<HalfShaft>(
  'a half-shaft: an object with inner, outer',
  {
    inner: required(point),
    outer: required(point),
    diameter: optional(positive('mm')),
    innerAxis: optional(direction),
    innerLimit: optional(limitAngle),
    outerLimit: optional(limitAngle),
    plungeIn: optional(notNegative('mm')),
    plungeOut: optional(notNegative('mm')),
  },
);

export const strap: Reader<Strap> = object<Strap>('a strap: an object with top, bottom, length', {
  top: required(point),
  bottom: required(point),
  on: optional(carrier),
  length: required(positive('mm')),
});

const meshFile: Reader<string> = {
  wanted: 'the name of a mesh file beside the model',
  read: (value, path) => {
    const name = text.read(value, path);
    const isElsewhere = /^[\\/]|^[a-z][a-z\d+.-]*:/i.test(name);
    if (name === '' || isElsewhere || name.split(/[\\/]/).includes('..')) {
      refuseValue(path, name, `${meshFile.wanted}, relative and without ".."`);
    }
    return name;
  },
};

const obstacleName: Reader<string> = {
  wanted: "the obstacle's name: text of at least one character",
  read: (value, path) =>
    typeof value === 'string' && value !== ''
      ? value
      : refuseValue(path, value, obstacleName.wanted),
};

const fingerprint: Reader<string> = {
  wanted: "the file's fingerprint: 16 digits 0-9 or a-f",
  read: (value, path) =>
    typeof value === 'string' && /^[\da-f]{16}$/.test(value)
      ? value
      : refuseValue(path, value, fingerprint.wanted),
};

type Shaped<S extends Obstacle['shape']> = Extract<Obstacle, { shape: S }>;

const obstacles: { readonly [S in Obstacle['shape']]: Reader<Shaped<S>> } = {
  tube: object<Shaped<'tube'>>('a tube', {
    name: required(obstacleName),
    shape: required(word('tube')),
    points: required(polyline),
    diameter: required(positive('mm')),
  }),
  box: object<Shaped<'box'>>('a box', {
    name: required(obstacleName),
    shape: required(word('box')),
    min: required(point),
    max: required(point),
  }),
  mesh: object<Shaped<'mesh'>>('a mesh', {
    name: required(obstacleName),
    shape: required(word('mesh')),
    file: required(meshFile),
    unit: optional(word<MeshUnit>('mm', 'cm', 'm', 'inch')),
    position: optional(point),
    rotation: optional(turns),
    content: optional(fingerprint),
  }),
};

const obstacleShape = word('tube', 'box', 'mesh');

const AXES = ['x', 'y', 'z'] as const;

export const obstacle: Reader<Obstacle> = {
  wanted: 'an obstacle: an object with name, shape',
  read: (value, path) => {
    const given = keyed(value, path, obstacle.wanted);
    const shapePath = keyPath(path, 'shape');
    const stated = own(given, 'shape');
    if (stated === undefined) refuse(shapePath, 'nothing', obstacleShape.wanted);
    const clean = obstacles[obstacleShape.read(stated, shapePath)].read(value, path);
    if (clean.shape !== 'box') return clean;
    AXES.forEach((axis, index) => {
      const [least, most] = [clean.min[index] ?? 0, clean.max[index] ?? 0];
      if (least >= most) {
        refuse(
          `${path}.max[${index}]`,
          String(most),
          `more than the box's least ${axis}, ${least}`,
        );
      }
    });
    return clean;
  },
};

/** The table of an obstacle of one shape, for the order of its keys. */
export function obstacleTable(shape: Obstacle['shape']): Reader<Obstacle> {
  return obstacles[shape];
}
