/** The model file's door: every kind of damage is answered with one whole, named line. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { formatModelError, parseModel, readModel } from '../../solver/model/parse.ts';

const EXAMPLE = readFileSync('models/half-ton-factory.json', 'utf8');

type Part = Record<string, unknown>;

/** The line that answers a text; the model's name when it is sound. */
function lineFor(text: string): string {
  const result = parseModel(text, 'x.json');
  return result.ok ? `sound: ${result.model.name}` : formatModelError(result.error);
}

/** Sets the value at a path of the example ("a.b.0.c"), or removes it, and answers with the line for the file. */
function damaged(path: string, value?: unknown): string {
  const model = JSON.parse(EXAMPLE) as Part;
  const steps = path.split('.');
  const last = steps.pop() ?? '';
  let part = model;
  for (const step of steps) {
    part[step] ??= {};
    part = part[step] as Part;
  }
  if (value === undefined) delete part[last];
  else part[last] = value;
  return lineFor(JSON.stringify(model));
}

/** The example with whole parts put in. */
function withParts(parts: Part): string {
  return lineFor(JSON.stringify({ ...JSON.parse(EXAMPLE), ...parts }));
}

const NUMBER = 'a number smaller than 1e5 in size';
const POSITIVE = 'a number above 0 and below 1e5';
const LIMIT = 'a number above 0 and at most 90 (degrees)';
const POINT = 'a point [x, y, z] (mm)';
const SIZES = 'such as 265/70R17, LT285/75R16 or 35x12.50R17LT';
const TOP_KEYS =
  'format, name, notes, lowerArm, upperArm, tieRod, steering, hub, wheel, tyre, knuckle, brake, coilover, antiRollBar, ' +
  'halfShaft, strap, travel, stops, obstacles, required, unwatched, tolerance, vehicle, targets';
const ARM_KEYS =
  'frontPivot, rearPivot, ballJoint, tubeDiameter, frontCam, rearCam, studAxis, housingAxis, ballJointLimit, legs';

test('the shipped example is sound', () => {
  expect(lineFor(EXAMPLE)).toBe('sound: Half-ton four-wheel drive, factory height');
});

describe('text that is no JSON', () => {
  const deep = '['.repeat(100_000);
  test.each([
    ['', 'line 1, column 1: found the end of the file, wanted a model: an object in { }'],
    ['\n  ', 'line 2, column 3: found the end of the file, wanted a model: an object in { }'],
    ['hello', 'line 1, column 1: found "h", wanted a model: an object in { }'],
    ['{', 'line 1, column 2: found the end of the file, wanted a key in double quotes'],
    ['{"format" 1}', 'line 1, column 11: found "1", wanted ":"'],
    ['{"a": 1 "b": 2}', 'line 1, column 9: found "\\"", wanted "," or "}"'],
    ['{"a": [1 2]}', 'line 1, column 10: found "2", wanted "," or "]"'],
    ['{\r\n"a": 1,\r\n}', 'line 3, column 1: found "}", wanted a key in double quotes'],
    ['{"a": [1,]}', 'line 1, column 10: found "]", wanted a value'],
    ["{'a': 1}", 'line 1, column 2: found "\'", wanted a key in double quotes'],
    ['{"a": 012}', 'line 1, column 8: found "1", wanted "," or "}"'],
    ['{"a": .5}', 'line 1, column 7: found ".", wanted a value'],
    ['{"a": NaN}', 'line 1, column 7: found "N", wanted a value'],
    [
      '{"a": "x\ny"}',
      'line 1, column 9: found "\\n", wanted a closing double quote before the end of the line',
    ],
    ['{"a": "\\x"}', 'line 1, column 8: found "\\\\", wanted a JSON escape such as \\n or \\u00e9'],
    [
      '{"a": "\\u12"}',
      'line 1, column 8: found "\\\\", wanted a JSON escape such as \\n or \\u00e9',
    ],
    ['{} {}', 'line 1, column 4: found "{", wanted the end of the file'],
    [
      '{"a": "\u0007"}',
      'line 1, column 8: found "\\u0007", wanted a closing double quote before the end of the line',
    ],
    [deep, 'line 1, column 65: found more than 64 levels of nesting, wanted at most 64'],
    [
      '{"a": {"b c": 1, "b c": 2}}',
      'a["b c"]: found the key a second time, at line 1, column 18, wanted each key once',
    ],
    [
      '{"hub": {"face": 1,\n"face": 2}}',
      'hub.face: found the key a second time, at line 2, column 1, wanted each key once',
    ],
  ])('%j', (text, line) => {
    expect(lineFor(text)).toBe(`x.json: ${line}`);
  });

  test('a byte order mark at the start is accepted, a second one is not', () => {
    expect(lineFor(`\ufeff${EXAMPLE}`)).toContain('sound: ');
    expect(lineFor(`\ufeff\ufeff${EXAMPLE}`)).toBe(
      'x.json: line 1, column 1: found "\\ufeff", wanted a model: an object in { }',
    );
  });
});

describe('no model at all', () => {
  test.each([
    ['[]', '(whole file): found an empty list, wanted a model: an object in { }'],
    ['[1, 2]', '(whole file): found a list of 2, wanted a model: an object in { }'],
    ['null', '(whole file): found null, wanted a model: an object in { }'],
    ['true', '(whole file): found true, wanted a model: an object in { }'],
    ['12', '(whole file): found 12, wanted a model: an object in { }'],
    ['{}', 'format: found nothing, wanted "armscribe/1"'],
    [
      '{"format": "armscribe/2", "more": 1}',
      'format: found "armscribe/2" (text), wanted "armscribe/1"',
    ],
    ['{"format": 1e999}', 'format: found Infinity (not a finite number), wanted "armscribe/1"'],
    ['{"format": "armscribe/1"}', 'name: found nothing, wanted text'],
  ])('%s', (text, line) => {
    expect(lineFor(text)).toBe(`x.json: ${line}`);
  });
});

describe('keys', () => {
  test.each([
    [
      'lowerarm',
      {},
      `lowerarm: found an unknown key, wanted one of ${TOP_KEYS}; did you mean "lowerArm"?`,
    ],
    ['tire', {}, `tire: found an unknown key, wanted one of ${TOP_KEYS}; did you mean "tyre"?`],
    ['colour', 1, `colour: found an unknown key, wanted one of ${TOP_KEYS}`],
    ['constructor', 1, `constructor: found an unknown key, wanted one of ${TOP_KEYS}`],
    ['two words', 1, `["two words"]: found an unknown key, wanted one of ${TOP_KEYS}`],
    ['line\nbreak', 1, `["line\\nbreak"]: found an unknown key, wanted one of ${TOP_KEYS}`],
    [
      'lowerArm.frontPivto',
      1,
      `lowerArm.frontPivto: found an unknown key, wanted one of ${ARM_KEYS}; did you mean "frontPivot"?`,
    ],
    [
      'lowerArm.frontCam.thrwo',
      1,
      'lowerArm.frontCam.thrwo: found an unknown key, wanted one of slot, throw, angle, marks; did you mean "throw"?',
    ],
    ['x'.repeat(60), 1, `["${'x'.repeat(40)}…"]: found an unknown key, wanted one of ${TOP_KEYS}`],
    [
      'upperArm',
      undefined,
      'upperArm: found nothing, wanted an arm: an object with frontPivot, rearPivot, ballJoint',
    ],
    ['lowerArm.ballJoint', undefined, `lowerArm.ballJoint: found nothing, wanted ${POINT}`],
    [
      'lowerArm.rearCam.throw',
      undefined,
      'lowerArm.rearCam.throw: found nothing, wanted a number of at least 0 and below 1e5 (mm)',
    ],
    ['travel.droop', undefined, `travel.droop: found nothing, wanted ${POSITIVE} (mm)`],
    ['vehicle.cornerMass', undefined, `vehicle.cornerMass: found nothing, wanted ${POSITIVE} (kg)`],
    [
      'targets.toe.plusMinus',
      undefined,
      'targets.toe.plusMinus: found nothing, wanted a number of at least 0 and below 1e5 (degrees)',
    ],
    [
      'lowerArm.legs.front',
      [],
      'lowerArm.legs.rear: found nothing, wanted a list of points [x, y, z] (mm)',
    ],
    ['coilover', null, 'coilover: found null, wanted a coilover: an object with top, bottom'],
    [
      'obstacles.0.shape',
      undefined,
      'obstacles[0].shape: found nothing, wanted "tube" or "box" or "mesh"',
    ],
    [
      'obstacles.0.diameter',
      5,
      'obstacles[0].diameter: found an unknown key, wanted one of name, shape, min, max',
    ],
  ])('%s', (path, value, line) => {
    expect(damaged(path, value)).toBe(`x.json: ${line}`);
  });

  test('a key named __proto__ is a key like any other', () => {
    const line = lineFor(EXAMPLE.replace('{', '{ "__proto__": { "name": "x" },'));
    expect(line).toBe(`x.json: __proto__: found an unknown key, wanted one of ${TOP_KEYS}`);
    expect(lineFor(EXAMPLE.replace('"tieRod/wheel"', '"__proto__"'))).toBe(
      'x.json: required.__proto__: found an unknown key, wanted "default" or "partA/partB"',
    );
  });

  test('what a prototype holds is not in the file', () => {
    const inherited = Object.create({ format: 'armscribe/1' }) as unknown;
    const result = readModel(inherited, 'x.json');
    expect(result.ok ? '' : formatModelError(result.error)).toBe(
      'x.json: format: found nothing, wanted "armscribe/1"',
    );
  });
});

describe('types and ranges', () => {
  test.each([
    [
      'lowerArm.frontPivot.1',
      'abc',
      `lowerArm.frontPivot[1]: found "abc" (text), wanted ${NUMBER}`,
    ],
    ['lowerArm.frontPivot.0', null, `lowerArm.frontPivot[0]: found null, wanted ${NUMBER}`],
    ['lowerArm.frontPivot.2', 1e5, `lowerArm.frontPivot[2]: found 100000, wanted ${NUMBER}`],
    ['upperArm.ballJoint', [1, 2], `upperArm.ballJoint: found a list of 2, wanted ${POINT}`],
    ['upperArm.ballJoint', { x: 1 }, `upperArm.ballJoint: found an object, wanted ${POINT}`],
    ['name', 3, 'name: found 3, wanted text'],
    ['notes', ['a'], 'notes: found a list of 1, wanted text'],
    [
      'lowerArm',
      [],
      'lowerArm: found an empty list, wanted an arm: an object with frontPivot, rearPivot, ballJoint',
    ],
    ['lowerArm.tubeDiameter', 0, `lowerArm.tubeDiameter: found 0, wanted ${POSITIVE} (mm)`],
    ['lowerArm.tubeDiameter', true, `lowerArm.tubeDiameter: found true, wanted ${POSITIVE} (mm)`],
    [
      'lowerArm.frontCam.throw',
      -1,
      'lowerArm.frontCam.throw: found -1, wanted a number of at least 0 and below 1e5 (mm)',
    ],
    [
      'lowerArm.frontCam.marks',
      2.5,
      'lowerArm.frontCam.marks: found 2.5, wanted a whole number of at least 1 and below 1e5',
    ],
    [
      'lowerArm.frontCam.slot',
      [0, 0, 0],
      'lowerArm.frontCam.slot: found [0, 0, 0], wanted a direction that is not zero',
    ],
    ['lowerArm.ballJointLimit', 91, `lowerArm.ballJointLimit: found 91, wanted ${LIMIT}`],
    ['tieRod.innerLimit', 0, `tieRod.innerLimit: found 0, wanted ${LIMIT}`],
    [
      'upperArm.frontShim',
      { thicknes: 1 },
      'upperArm.frontShim.thicknes: found an unknown key, wanted one of direction, thickness, step, max; did you mean "thickness"?',
    ],
    [
      'upperArm.frontShim',
      { thickness: -1 },
      'upperArm.frontShim.thickness: found -1, wanted a number of at least 0 and below 1e5 (mm)',
    ],
    [
      'upperArm.rearShim',
      { thickness: 7, max: 6 },
      'upperArm.rearShim.thickness: found 7, wanted at most max, 6',
    ],
    [
      'lowerArm.frontShim',
      { thickness: 1 },
      `lowerArm.frontShim: found an unknown key, wanted one of ${ARM_KEYS}`,
    ],
    ['tieRod.flats', 1, 'tieRod.flats: found 1, wanted a whole number of at least 2 and below 1e5'],
    ['tieRod.pitch', 0, `tieRod.pitch: found 0, wanted ${POSITIVE} (mm per turn)`],
    ['tieRod.bends', [[1, 2, '3']], `tieRod.bends[0][2]: found "3" (text), wanted ${NUMBER}`],
    [
      'tieRod.profile',
      [[0, 30], [50]],
      'tieRod.profile[1]: found a list of 1, wanted a pair [distance from the outer joint, diameter] (mm)',
    ],
    [
      'tieRod.profile',
      [
        [0, 30],
        [50, 22],
        [40, 20],
      ],
      'tieRod.profile[2][0]: found 40, wanted at least the distance before it, 50',
    ],
    [
      'tieRod.profile',
      [[-5, 30]],
      'tieRod.profile[0][0]: found -5, wanted a number of at least 0 and below 1e5 (mm, a distance)',
    ],
    [
      'tieRod.profile',
      [[0, 0]],
      `tieRod.profile[0][1]: found 0, wanted ${POSITIVE} (mm, a diameter)`,
    ],
    [
      'steering.direction',
      [0, -1, 0],
      'steering.direction[1]: found -1, wanted a number above 0 (to the left)',
    ],
    [
      'steering.direction',
      [1, 0, 0],
      'steering.direction[1]: found 0, wanted a number above 0 (to the left)',
    ],
    [
      'steering.limit',
      [0, 0],
      'steering.limit: found [0, 0], wanted the least below the greatest, with 0 between them',
    ],
    [
      'steering.limit',
      [72, -72],
      'steering.limit: found [72, -72], wanted the least below the greatest, with 0 between them',
    ],
    [
      'steering.limit',
      [5, 72],
      'steering.limit: found [5, 72], wanted the least below the greatest, with 0 between them',
    ],
    ['hub.camber', 46, 'hub.camber: found 46, wanted a number from -45 to 45 (degrees)'],
    ['wheel.width', -8, `wheel.width: found -8, wanted ${POSITIVE} (inch code)`],
    [
      'wheel.spacer',
      -1,
      'wheel.spacer: found -1, wanted a number of at least 0 and below 1e5 (mm)',
    ],
    [
      'wheel.section',
      [[1, 2]],
      'wheel.section: found a list of 1, wanted a list of at least 2 section points [s, ρ] (mm)',
    ],
    [
      'wheel.disc',
      [
        [1, 2],
        [1, -2],
      ],
      'wheel.disc[1][1]: found -2, wanted a number of at least 0 and below 1e5 (mm, a radius)',
    ],
    [
      'wheel.weights',
      [[-60, 190], 5],
      'wheel.weights[1]: found 5, wanted a section point [s, ρ] (mm)',
    ],
    [
      'brake.section',
      'round',
      'brake.section: found "round" (text), wanted a list of at least 2 section points [s, ρ] (mm)',
    ],
    [
      'coilover.on',
      'frame',
      'coilover.on: found "frame" (text), wanted "lowerArm" or "upperArm" or "knuckle"',
    ],
    ['coilover.springRate', 0, `coilover.springRate: found 0, wanted ${POSITIVE} (N/mm)`],
    ['coilover.maxLength', 300, 'coilover.maxLength: found 300, wanted more than minLength, 360'],
    [
      'antiRollBar.axis',
      [[1, 2, 3]],
      'antiRollBar.axis: found a list of 1, wanted two points [x, y, z] (mm)',
    ],
    ['antiRollBar.linkDiameter', 0, `antiRollBar.linkDiameter: found 0, wanted ${POSITIVE} (mm)`],
    [
      'halfShaft.plungeIn',
      -1,
      'halfShaft.plungeIn: found -1, wanted a number of at least 0 and below 1e5 (mm)',
    ],
    ['travel.bump', 0, `travel.bump: found 0, wanted ${POSITIVE} (mm)`],
    ['stops.droop', -5, `stops.droop: found -5, wanted ${POSITIVE} (mm)`],
    [
      'vehicle.frontBrakeShare',
      68,
      'vehicle.frontBrakeShare: found 68, wanted a number from 0 to 1',
    ],
    [
      'targets.toe.plusMinus',
      -0.1,
      'targets.toe.plusMinus: found -0.1, wanted a number of at least 0 and below 1e5 (degrees)',
    ],
    [
      'required.default',
      '6',
      'required.default: found "6" (text), wanted a number of at least 0 and below 1e5 (mm)',
    ],
    [
      'tolerance.default',
      -2,
      'tolerance.default: found -2, wanted a number of at least 0 and below 1e5 (mm)',
    ],
    ['name', { long: 'x'.repeat(500) }, 'name: found an object, wanted text'],
    [
      'hub.toe',
      `tab\t bell\u0007 ${'é'.repeat(100)}`,
      `hub.toe: found "tab\\t bell\\u0007 ${'é'.repeat(29)}…" (text), wanted a number from -45 to 45 (degrees)`,
    ],
    [
      'hub.toe',
      'half \ud800 pair',
      'hub.toe: found "half \\ud800 pair" (text), wanted a number from -45 to 45 (degrees)',
    ],
  ])('%s = %j', (path, value, line) => {
    expect(damaged(path, value)).toBe(`x.json: ${line}`);
  });

  test('a number too large for a double', () => {
    expect(lineFor(EXAMPLE.replace('165', '1e999'))).toBe(
      `x.json: lowerArm.frontPivot[0]: found Infinity (not a finite number), wanted ${NUMBER}`,
    );
  });

  test('NaN and nothing in a list, which only parsed values can hold', () => {
    const model = JSON.parse(EXAMPLE) as { hub: { face: unknown } };
    const lineOf = (face: unknown) => {
      const result = readModel({ ...model, hub: { face } }, 'x.json');
      return result.ok ? '' : formatModelError(result.error);
    };
    expect(lineOf([Number.NaN, 0, 0])).toBe(
      `x.json: hub.face[0]: found NaN (not a finite number), wanted ${NUMBER}`,
    );
    expect(lineOf([0, undefined, 0])).toBe(`x.json: hub.face[1]: found nothing, wanted ${NUMBER}`);
    expect(lineOf(Symbol('x'))).toBe(`x.json: hub.face: found a symbol, wanted ${POINT}`);
  });
});

describe('obstacles', () => {
  const box = { name: 'rail', shape: 'box', min: [0, 0, 0], max: [1, 1, 1] };
  const tube = {
    name: 'pipe',
    shape: 'tube',
    points: [
      [0, 0, 0],
      [1, 0, 0],
    ],
    diameter: 5,
  };
  const mesh = { name: 'body', shape: 'mesh', file: 'parts/body.stl' };

  test('one of each shape is sound', () => {
    expect(withParts({ obstacles: [box, tube, mesh] })).toContain('sound: ');
    expect(withParts({ obstacles: [] })).toContain('sound: ');
  });

  test('a mesh may say its unit, its place and which file is meant', () => {
    const placed = { unit: 'cm', position: [1, 2, 3], rotation: [90, 0, -45] };
    expect(
      withParts({ obstacles: [{ ...mesh, ...placed, content: '0123456789abcdef' }] }),
    ).toContain('sound: ');
  });

  test.each([
    [
      [{ ...box, shape: 'ball' }],
      'obstacles[0].shape: found "ball" (text), wanted "tube" or "box" or "mesh"',
    ],
    [
      [{ ...box, name: '' }],
      'obstacles[0].name: found "" (text), wanted the obstacle\'s name: text of at least one character',
    ],
    [
      [{ ...box, max: [1, 0, 1] }],
      "obstacles[0].max[1]: found 0, wanted more than the box's least y, 0",
    ],
    [
      [tube, { ...tube, name: 'stub', points: [[0, 0, 0]] }],
      'obstacles[1].points: found a list of 1, wanted a list of at least 2 points [x, y, z] (mm)',
    ],
    [
      [{ ...mesh, file: '../body.stl' }],
      'obstacles[0].file: found "../body.stl" (text), wanted the name of a mesh file beside the model, relative and without ".."',
    ],
    [
      [{ ...mesh, file: '/etc/body.stl' }],
      'obstacles[0].file: found "/etc/body.stl" (text), wanted the name of a mesh file beside the model, relative and without ".."',
    ],
    [
      [{ ...mesh, file: 'https://body' }],
      'obstacles[0].file: found "https://body" (text), wanted the name of a mesh file beside the model, relative and without ".."',
    ],
    [
      [{ ...mesh, unit: 'ft' }],
      'obstacles[0].unit: found "ft" (text), wanted "mm" or "cm" or "m" or "inch"',
    ],
    [
      [{ ...mesh, position: [0, 0] }],
      'obstacles[0].position: found a list of 2, wanted a point [x, y, z] (mm)',
    ],
    [
      [{ ...mesh, rotation: [0, 90] }],
      'obstacles[0].rotation: found a list of 2, wanted three turns [about x, about y, about z], each from -360 to 360 (degrees)',
    ],
    [
      [{ ...mesh, rotation: [0, 361, 0] }],
      'obstacles[0].rotation[1]: found 361, wanted a number from -360 to 360 (degrees)',
    ],
    [
      [{ ...mesh, content: '0123' }],
      'obstacles[0].content: found "0123" (text), wanted the file\'s fingerprint: 16 digits 0-9 or a-f',
    ],
    [
      [{ ...mesh, scale: 25.4 }],
      'obstacles[0].scale: found an unknown key, wanted one of name, shape, file, unit, position, rotation, content',
    ],
    [
      [box, tube, box],
      'obstacles[2].name: found "rail", the name of obstacles[0] too, wanted a name of its own',
    ],
    [
      [{ ...box, name: 'tieRod' }],
      'obstacles[0].name: found "tieRod", the name of a part, wanted a name of its own',
    ],
  ])('%j', (obstacles, line) => {
    expect(withParts({ obstacles })).toBe(`x.json: ${line}`);
  });
});

describe('names of pairs and points', () => {
  test.each([
    [{ default: 5, 'wheel/tieRod': 8 }],
    [{ 'frame rail/tyre': 12 }],
    [{ 'halfShaft/brake': 0 }],
    [{}],
  ])('required %j is sound', (required) => {
    expect(withParts({ required })).toContain('sound: ');
  });

  test.each([
    [{ tieRod: 8 }, 'required.tieRod: found an unknown key, wanted "default" or "partA/partB"'],
    [
      { defualt: 8 },
      'required.defualt: found an unknown key, wanted "default" or "partA/partB"; did you mean "default"?',
    ],
    [
      { 'tieRod/weel': 8 },
      'required["tieRod/weel"]: found no part or obstacle named "weel", wanted "default" or "partA/partB"; did you mean "wheel"?',
    ],
    [
      { 'tieRod/': 8 },
      'required["tieRod/"]: found no part or obstacle named "", wanted "default" or "partA/partB"',
    ],
    [
      { 'tieRod/tieRod': 8 },
      'required["tieRod/tieRod"]: found a part paired with itself, wanted two different parts',
    ],
    [
      { 'tieRod/wheel': 8, 'wheel/tieRod': 9 },
      'required["wheel/tieRod"]: found the pair of "tieRod/wheel" again, wanted each pair once',
    ],
  ])('required %j', (required, line) => {
    expect(withParts({ required })).toBe(`x.json: ${line}`);
  });

  test.each([
    [['tieRod'], 'unwatched[0]: found no pair: "tieRod", wanted "partA/partB"'],
    [
      ['coilover/halfShaft', 'coilover/weel'],
      'unwatched[1]: found no part or obstacle named "weel", wanted "partA/partB"; did you mean "wheel"?',
    ],
    [
      ['coilover/halfShaft', 'halfShaft/coilover'],
      'unwatched[1]: found the pair "halfShaft/coilover" again, wanted each pair once',
    ],
    [
      'coilover/halfShaft',
      'unwatched: found "coilover/halfShaft" (text), wanted a list of pairs "partA/partB"',
    ],
  ])('unwatched %j', (unwatched, line) => {
    expect(withParts({ unwatched })).toBe(`x.json: ${line}`);
  });

  test('an obstacle whose name holds a slash can be paired', () => {
    const obstacles = [{ name: 'rail/left', shape: 'box', min: [0, 0, 0], max: [1, 1, 1] }];
    expect(withParts({ obstacles, required: { 'tyre/rail/left': 5 } })).toContain('sound: ');
  });

  test.each([
    [{ 'lowerArm.frontPivot': 1, 'antiRollBar.axis[1]': 1, 'obstacles.0.min': 3 }],
    [{ default: 0 }],
    [
      {
        'lowerArm.frontPivot.z': 1,
        'hub.camber': 0.1,
        'tyre.loadedRadius': 4,
        'vehicle.cgHeight': 30,
      },
    ],
  ])('tolerance %j is sound', (tolerance) => {
    expect(withParts({ tolerance })).toContain('sound: ');
  });

  const wanted = 'wanted "default" or the path of a point or measured number in this model';
  test.each([
    [
      { 'lowerArm.frontPivto': 1 },
      `tolerance["lowerArm.frontPivto"]: found no such point, ${wanted}; did you mean "lowerArm.frontPivot"?`,
    ],
    [{ 'tieRod.bends[0]': 1 }, `tolerance["tieRod.bends[0]"]: found no such point, ${wanted}`],
    [{ 'travel.bump': 1 }, `tolerance["travel.bump"]: found no such point, ${wanted}`],
    [
      { 'hub.camber': -1 },
      'tolerance["hub.camber"]: found -1, wanted a number of at least 0 and below 1e5 (degrees)',
    ],
    [
      { 'antiRollBar.axis[0]': 1, 'antiRollBar.axis.0': 2 },
      'tolerance["antiRollBar.axis.0"]: found the same point again, wanted each point once',
    ],
  ])('tolerance %j', (tolerance, line) => {
    expect(withParts({ tolerance })).toBe(`x.json: ${line}`);
  });
});

describe('tyre and wheel', () => {
  test.each([
    [{}, 'tyre.size: found nothing, wanted a tyre size, or diameter and width (mm)'],
    [{ width: 270 }, 'tyre.diameter: found nothing, wanted the diameter that goes with width (mm)'],
    [{ diameter: 800 }, 'tyre.width: found nothing, wanted the width that goes with diameter (mm)'],
    [
      { size: '265/70R17', width: 270 },
      'tyre.width: found a width beside size, wanted either size, or diameter and width',
    ],
    [{ size: 'big' }, `tyre.size: found "big" (text), wanted a tyre size ${SIZES}`],
    [
      { size: '265/70-17' },
      `tyre.size: found "265/70-17" (text), wanted a tyre size with R before the rim's code, ${SIZES}`,
    ],
    [
      { size: '265/70R18' },
      'tyre.size: found "265/70R18", for a rim of code 18, wanted a size for wheel.diameter, 17',
    ],
    [
      { diameter: 430, width: 200 },
      "tyre.diameter: found an overall diameter of 430 mm, wanted more than the rim's 436.6 mm",
    ],
    [
      { size: '265/70R17', loadedRadius: 200 },
      "tyre.loadedRadius: found 200, wanted from the rim's radius, 218.3 mm, to the tyre's, 401.4 mm",
    ],
    [
      { size: '265/70R17', loadedRadius: 401.5 },
      "tyre.loadedRadius: found 401.5, wanted from the rim's radius, 218.3 mm, to the tyre's, 401.4 mm",
    ],
  ])('%j', (tyre, line) => {
    expect(withParts({ tyre })).toBe(`x.json: ${line}`);
  });

  test.each([
    [{ size: ' lt 265 / 70 zr 17 ' }],
    [{ diameter: 800, width: 270, loadedRadius: 400 }],
    [{ size: '35x12.50R17LT', loadedRadius: 218.3 }],
  ])('%j is sound', (tyre) => {
    expect(withParts({ tyre })).toContain('sound: ');
  });
});

describe('points that make no bodies', () => {
  test.each([
    [
      'lowerArm.rearPivot',
      [165.6, 395, -88],
      'lowerArm.rearPivot: found a point 0.6 mm from lowerArm.frontPivot, wanted at least 1 mm between them',
    ],
    [
      'upperArm.ballJoint',
      [102, 478, 219],
      "upperArm.ballJoint: found a point 0 mm from the line through the arm's pivots, wanted at least 1 mm off it",
    ],
    [
      'upperArm.ballJoint',
      [6, 772, -117.5],
      'upperArm.ballJoint: found a point 0.5 mm from lowerArm.ballJoint, wanted at least 1 mm between them',
    ],
    [
      'upperArm.ballJoint',
      [50, 700, -118.25],
      'upperArm.ballJoint[2]: found a height 0.25 mm from that of lowerArm.ballJoint, wanted at least 1 mm: a steering axis that is not level',
    ],
    [
      'tieRod.outer',
      [148, 390, -48],
      'tieRod.outer: found a point 0 mm from tieRod.inner, wanted at least 1 mm between them',
    ],
    [
      'tieRod.outer',
      [-9, 740, 54],
      'tieRod.outer: found a point 0 mm from the steering axis, wanted at least 1 mm off it',
    ],
    [
      'tieRod.studAxis',
      [-9, 355, -13],
      'tieRod.studAxis: found an axis 0 degrees from the rod, wanted an axis across the rod',
    ],
    [
      'tieRod.inner',
      [139, 745, 300],
      'tieRod.studAxis: found the upright default 0 degrees from the rod, wanted an axis across the rod',
    ],
    [
      'coilover.top',
      [-2, 668, -98],
      'coilover.bottom: found a point 0 mm from coilover.top, wanted at least 1 mm between them',
    ],
    [
      'antiRollBar.axis.1',
      [330, 300, -40],
      'antiRollBar.axis[1]: found a point 0 mm from antiRollBar.axis[0], wanted at least 1 mm between them',
    ],
    [
      'antiRollBar.leverEnd',
      [330, 560, -40],
      "antiRollBar.leverEnd: found a point 0 mm from the bar's axis, wanted at least 1 mm off it",
    ],
    [
      'antiRollBar.link',
      [70, 560, -20],
      'antiRollBar.link: found a point 0 mm from antiRollBar.leverEnd, wanted at least 1 mm between them',
    ],
    [
      'antiRollBar.link',
      [70, 820, -20],
      "antiRollBar.link: found a drop link in line with its lever (0 mm off), wanted at least 1 mm off the plane of the bar's axis and leverEnd",
    ],
    [
      'halfShaft.outer',
      [-6, 250, 12],
      'halfShaft.outer: found a point 0 mm from halfShaft.inner, wanted at least 1 mm between them',
    ],
  ])('%s = %j', (path, value, line) => {
    expect(damaged(path, value)).toBe(`x.json: ${line}`);
  });

  test('turns need a pitch, but none of them does not', () => {
    const { pitch: _, ...rod } = JSON.parse(EXAMPLE).tieRod as Part;
    expect(withParts({ tieRod: { ...rod, turns: 2 } })).toBe(
      'x.json: tieRod.pitch: found nothing, with 2 turns, wanted the mm per turn that turns need',
    );
    expect(withParts({ tieRod: { ...rod, turns: 0 } })).toContain('sound: ');
  });
});

test('a pivot has a cam or shims', () => {
  const { upperArm } = JSON.parse(EXAMPLE) as Record<string, Part>;
  const both = { ...upperArm, rearCam: { throw: 4 }, rearShim: { thickness: 1 } };
  expect(withParts({ upperArm: both })).toBe(
    'x.json: upperArm.rearShim: found a shim beside upperArm.rearCam, wanted a cam or a shim on a pivot, not both',
  );
  expect(withParts({ upperArm: { ...upperArm, frontShim: {}, rearCam: { throw: 4 } } })).toContain(
    'sound: ',
  );
});

describe('one fixed order', () => {
  test('format before unknown keys before missing keys before values', () => {
    const bad = { name: 3, colour: 1 };
    expect(lineFor(JSON.stringify(bad))).toBe(
      'x.json: format: found nothing, wanted "armscribe/1"',
    );
    expect(lineFor(JSON.stringify({ ...bad, format: 'armscribe/1' }))).toBe(
      `x.json: colour: found an unknown key, wanted one of ${TOP_KEYS}`,
    );
    expect(lineFor(JSON.stringify({ name: 3, format: 'armscribe/1' }))).toBe(
      'x.json: lowerArm: found nothing, wanted an arm: an object with frontPivot, rearPivot, ballJoint',
    );
  });

  test('the order of keys in the file does not matter', () => {
    const model = { ...JSON.parse(EXAMPLE), travel: 1, hub: 2 } as Part;
    const reversed = Object.fromEntries(Object.entries(model).reverse());
    expect(lineFor(JSON.stringify(reversed))).toBe(
      'x.json: hub: found 2, wanted a hub: an object with face',
    );
    expect(lineFor(JSON.stringify(model))).toBe(
      'x.json: hub: found 2, wanted a hub: an object with face',
    );
  });

  test("the file's own name cannot break the line", () => {
    const result = parseModel('', 'a\nb\u001b[31m.json');
    expect(result.ok ? '' : formatModelError(result.error)).toBe(
      'a\\u000ab\\u001b[31m.json: line 1, column 1: found the end of the file, wanted a model: an object in { }',
    );
  });
});

describe('what is left as it was', () => {
  test('text with escapes, lone surrogates and characters outside the plane', () => {
    const name = 'tab\t quote" \\ / é 😀 \ud800';
    const result = parseModel(JSON.stringify({ ...JSON.parse(EXAMPLE), name }), 'x.json');
    expect(result.ok && result.model.name).toBe(name);
  });

  test('the value given is neither changed nor shared', () => {
    const value = JSON.parse(EXAMPLE) as { lowerArm: { frontPivot: number[] } };
    const result = readModel(value, 'x.json');
    value.lowerArm.frontPivot[0] = 1;
    expect(result.ok && result.model.lowerArm.frontPivot[0]).toBe(165);
    expect(JSON.stringify(readModel(Object.freeze(JSON.parse(EXAMPLE)), 'x.json'))).toBe(
      JSON.stringify(parseModel(EXAMPLE, 'x.json')),
    );
  });

  test('a list of a million points is read', () => {
    const bends = Array.from({ length: 1_000_000 }, () => [1, 2, 3]);
    const result = readModel(
      {
        ...JSON.parse(EXAMPLE),
        knuckle: {},
        lowerArm: { ...JSON.parse(EXAMPLE).lowerArm, legs: { front: bends, rear: [] } },
      },
      'x.json',
    );
    expect(result.ok && result.model.lowerArm.legs?.front.length).toBe(1_000_000);
  });
});
