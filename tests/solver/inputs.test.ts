import { describe, expect, test } from 'vitest';
import {
  applyInputs,
  GRADES,
  inputOf,
  inputSigma,
  inputsOf,
  inputValue,
  inputValues,
  readModel,
  withGrade,
  withInput,
} from '../../solver/index.ts';
import { hardPoints } from '../../src/state/points.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const full = FULL_MODEL;
const inputs = inputsOf(full);

describe('the inputs of a model', () => {
  test('are every coordinate of every hard point, and every measured number, each once', () => {
    const points = [...new Set(inputs.filter((i) => i.component !== null).map((i) => i.path))];
    expect([...points].sort()).toEqual(
      hardPoints(full)
        .map(({ path }) => path)
        .sort(),
    );
    expect(new Set(inputs.map(({ key }) => key)).size).toBe(inputs.length);
    expect(new Set(inputs.map(({ label }) => label)).size).toBe(inputs.length);
    const numbers = inputs.filter((i) => i.component === null).map((i) => i.key);
    expect(numbers).toEqual([
      'lowerArm.frontCam.throw',
      'lowerArm.rearCam.throw',
      'upperArm.frontCam.throw',
      'tieRod.pitch',
      'hub.camber',
      'hub.toe',
      'wheel.offset',
      'wheel.spacer',
      'tyre.loadedRadius',
      'coilover.springRate',
      'coilover.designForce',
      'strap.length',
      'vehicle.wheelbase',
      'vehicle.cgHeight',
      'vehicle.frontBrakeShare',
      'vehicle.frontDriveShare',
      'vehicle.cornerMass',
    ]);
  });

  test('are called as the page calls its points', () => {
    for (const { path, label } of hardPoints(full)) {
      expect(inputOf(full, `${path}.z`)?.pointLabel).toBe(label);
    }
  });

  test.each(SHIPPED)(
    'of %s read, change one by one and all at once, and change nothing else',
    (name) => {
      const model = shipped(name);
      const own = inputsOf(model);
      const before = inputValues(model, own);
      const text = JSON.stringify(model);
      own.forEach((input, index) => {
        const next = inputValues(withInput(model, input, before[index]! + 0.25), own);
        next.forEach((value, other) => {
          expect(value).toBe(other === index ? before[index]! + 0.25 : before[other]!);
        });
      });
      const moved = before.map((value, index) => value + index * 1e-3);
      expect([...inputValues(applyInputs(model, own, moved), own)]).toEqual([...moved]);
      expect(JSON.stringify(model)).toBe(text);
      expect(readModel(applyInputs(model, own, before), 'x.json').ok).toBe(true);
    },
  );
});

describe('the uncertainty of an input', () => {
  const stated = {
    ...full,
    tolerance: {
      default: 2,
      'tieRod.bends[0]': 1,
      'tieRod.inner': 0.8,
      'tieRod.inner.z': 0.3,
      'hub.toe': 0.05,
    },
  };
  test.each([
    ['tieRod.inner.x', 0.8],
    ['tieRod.inner.z', 0.3],
    ['tieRod.bends.0.y', 1],
    ['lowerArm.frontPivot.z', 2],
    ['hub.toe', 0.05],
    ['hub.camber', null],
    ['wheel.offset', null],
  ])('%s is %s', (key, sigma) => {
    expect(inputSigma(stated, inputOf(stated, key)!)).toBe(sigma);
  });

  test('is stated nowhere in a model without tolerance, until a grade is chosen', () => {
    const { tolerance: _, ...bare } = full;
    for (const input of inputs) expect(inputSigma(bare, input)).toBeNull();
    const tape = withGrade(bare, GRADES[0]!);
    expect(inputSigma(tape, inputOf(tape, 'hub.face.y')!)).toBe(2.5);
    expect(inputSigma(tape, inputOf(tape, 'hub.camber')!)).toBe(0.25);
    expect(readModel(tape, 'x.json').ok).toBe(true);
    expect(inputSigma(withGrade(stated, GRADES[0]!), inputOf(stated, 'tieRod.inner.z')!)).toBe(0.3);
  });

  test('asks for an input the model has', () => {
    const { coilover: _, ...bare } = full;
    expect(inputOf(bare, 'coilover.top.x')).toBeUndefined();
    expect(() => inputValue(bare, inputOf(full, 'coilover.top.x')!)).toThrow(
      'no input coilover.top.x',
    );
  });
});
