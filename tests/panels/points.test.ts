import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Model, parseModel, readModel } from '../../solver/index.ts';
import { walk } from '../../solver/model/read/table.ts';
import { plainPath } from '../../solver/model/sound/names.ts';
import type { Field } from '../../src/panels/points/field.ts';
import { fieldsOf } from '../../src/panels/points/fields.ts';
import { partsOf } from '../../src/panels/points/parts.ts';
import { SECTIONS, sectionFields } from '../../src/panels/points/sections.ts';
import { fromSlide, shownText, slideOf, toSlide } from '../../src/panels/points/shown.ts';
import { specOf } from '../../src/panels/points/spec.ts';
import { withTyreSize, withWheelDiameter } from '../../src/panels/points/tyre.ts';
import { FULL_MODEL } from '../support/full-model.ts';

function shipped(): Model[] {
  return readdirSync('models')
    .filter((name) => name.endsWith('.json'))
    .map((name) => {
      const read = parseModel(readFileSync(`models/${name}`, 'utf8'), name);
      if (!read.ok) throw new Error(`${name} is not sound.`);
      return read.model;
    });
}

const MODELS = [FULL_MODEL, ...shipped()];

/** Every single value of a model as a line of text. */
function leavesOf(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [`${path} = ${value}`];
  return Object.entries(value).flatMap(([key, item]) => leavesOf(item, `${path}.${key}`));
}

/** The smallest model there can be: everything optional is left out. */
const BARE: Model = {
  format: 'armscribe/1',
  name: 'Bare',
  lowerArm: { frontPivot: [165, 395, -88], rearPivot: [-205, 402, -96], ballJoint: [6, 772, -118] },
  upperArm: {
    frontPivot: [102, 478, 219],
    rearPivot: [-158, 470, 187],
    ballJoint: [-24, 708, 226],
  },
  tieRod: { inner: [148, 390, -48], outer: [139, 745, -61] },
  hub: { face: [0, 880, 0] },
  wheel: { diameter: 17, width: 8, offset: 45 },
  tyre: { size: '265/70R17' },
  travel: { bump: 105, droop: 105 },
};

function sound(model: Model): Model {
  const read = readModel(model, 'edited');
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.model;
}

function numbersIn(model: Model): string[] {
  const paths: string[] = [];
  walk(model, (value, path) => {
    if (typeof value === 'number') paths.push(plainPath(path));
    if (Array.isArray(value) && value.every((item) => typeof item === 'number')) {
      for (const index of value.keys()) paths.push(`${plainPath(path)}.${index}`);
    }
  });
  for (const group of ['required', 'tolerance'] as const) {
    paths.push(...Object.keys(model[group] ?? {}).map((key) => `${group}.${key}`));
  }
  return [...new Set(paths)].sort();
}

function numbersShown(fields: readonly Field[], model: Model): string[] {
  return fields
    .flatMap((field) => {
      if (field.form !== 'numbers') return [];
      const numbers = field.get(model);
      return numbers.length === 1 ? [field.path] : numbers.map((_, i) => `${field.path}.${i}`);
    })
    .sort();
}

it('counts an uncertainty in what it is of', () => {
  const kindOf = (key: string) => {
    const { kind, unit } = specOf(`tolerance.${key}`);
    return unit === undefined ? kind : `${kind}, ${unit}`;
  };
  expect(kindOf('lowerArm.frontPivot.z')).toBe('length');
  expect(kindOf('hub.camber')).toBe('angle, °');
  expect(kindOf('vehicle.cornerMass')).toBe('plain, kg');
});

describe('the fields', () => {
  it.each(MODELS.map((model) => [model.name, model] as const))(
    'show every number of the format, each once: %s',
    (_, model) => {
      const shown = numbersShown(fieldsOf(model), model);
      expect(new Set(shown).size).toBe(shown.length);
      expect(shown).toEqual(expect.arrayContaining(numbersIn(model)));
      const inSections = SECTIONS.flatMap((section) => sectionFields(section, model));
      expect(inSections.map(({ path }) => path).sort()).toEqual(
        fieldsOf(model)
          .map(({ path }) => path)
          .sort(),
      );
    },
  );

  it('show the defaults of what a bare file leaves out', () => {
    const shown = fieldsOf(BARE).flatMap((field) =>
      field.form === 'numbers' && !numbersIn(BARE).some((path) => path.startsWith(field.path))
        ? [[field.path, field.get(BARE)]]
        : [],
    );
    expect(shown).toEqual([
      ['tieRod.diameter', [22]],
      ['hub.camber', [0]],
      ['hub.toe', [0]],
      ['wheel.spacer', [0]],
      ['wheel.thickness', [6]],
      // 0.96 of half of 17 in + 2 × 265 × 0.7 = 802.8 mm.
      ['tyre.loadedRadius', [0.48 * (17 * 25.4 + 2 * 265 * 0.7)]],
      ['travel.ride', [0]],
    ]);
  });

  it('change the one number they show, and only that', () => {
    const text = leavesOf(FULL_MODEL);
    for (const field of fieldsOf(FULL_MODEL)) {
      if (field.form !== 'numbers') continue;
      const before = field.get(FULL_MODEL);
      before.forEach((number, index) => {
        const wanted = before.map((old, i) => (i === index ? number + 0.25 : old));
        // Rim and tyre go together, and are tested apart.
        if (field.path === 'wheel.diameter') return;
        const after = field.set(FULL_MODEL, wanted);
        expect(field.get(after), field.path).toEqual(wanted);
        // Defaults that are not in the file yet add a line of their own.
        const changed = leavesOf(after).filter((line) => !text.includes(line));
        expect(changed.length, field.path).toBe(1);
      });
    }
  });

  it('name no two things alike inside a section', () => {
    for (const model of MODELS) {
      for (const section of SECTIONS) {
        const labels = sectionFields(section, model).map(({ label }) => label);
        expect(new Set(labels).size, `${section.title}: ${labels}`).toBe(labels.length);
      }
    }
  });
});

describe('parts', () => {
  it.each([['bare', BARE] as const, ...MODELS.map((model) => [model.name, model] as const)])(
    'are added sound and taken away again: %s',
    (_, model) => {
      for (const { key } of SECTIONS) {
        for (const part of partsOf(key, model)) {
          if (part.remove !== null) sound(part.remove(model));
          if (part.add === null) continue;
          const grown = sound(part.add(model));
          const again = partsOf(key, grown).find(({ name }) => name === part.name);
          if (again?.remove) sound(again.remove(grown));
        }
      }
    },
  );

  it('can all be given to a bare corner, one after another, and all taken away', () => {
    let model = BARE;
    const grow = (): boolean =>
      SECTIONS.some(({ key }) =>
        partsOf(key, model).some((part) => {
          // Lists could grow for ever, and the tyre's two forms change places.
          if (
            part.add === null ||
            part.remove !== null ||
            /in place of|rail|tube$/.test(part.name)
          ) {
            return false;
          }
          model = sound(part.add(model));
          return true;
        }),
      );
    let steps = 0;
    while (grow() && steps < 200) steps += 1;
    expect(steps).toBeLessThan(200);
    for (const key of [
      'coilover',
      'antiRollBar',
      'halfShaft',
      'strap',
      'vehicle',
      'targets',
      'brake',
    ]) {
      expect(model).toHaveProperty(key);
    }
    const shrink = (): boolean =>
      SECTIONS.some(({ key }) =>
        partsOf(key, model).some((part) => {
          if (part.remove === null) return false;
          model = sound(part.remove(model));
          return true;
        }),
      );
    while (shrink() && steps < 500) steps += 1;
    expect(steps).toBeLessThan(500);
    expect(numbersIn(model).filter((path) => !numbersIn(BARE).includes(path))).toEqual([]);
  });

  it('take along what speaks of them', () => {
    const without = partsOf('obstacles', FULL_MODEL).find(({ name }) => name === 'inner wing');
    const noWing = sound(without?.remove?.(FULL_MODEL) ?? FULL_MODEL);
    expect(noWing.obstacles).toHaveLength(2);
    const member = partsOf('obstacles', noWing).find(({ name }) => name === 'crossmember/front');
    const noMember = sound(member?.remove?.(noWing) ?? noWing);
    expect(noMember.required).toEqual({ default: 6, 'tieRod/wheel': 8 });
    const bend = partsOf('tieRod', FULL_MODEL).find(({ name }) => name === 'bend');
    const oneBend = sound(bend?.remove?.(FULL_MODEL) ?? FULL_MODEL);
    expect(oneBend.tieRod.bends).toEqual([FULL_MODEL.tieRod.bends?.[0]]);
    expect(Object.keys(oneBend.tolerance ?? {})).not.toContain('tieRod.bends[1]');
  });
});

describe('rim and tyre', () => {
  it('go together, the loaded radius in proportion', () => {
    const larger = sound(withTyreSize(FULL_MODEL, 'LT285/70R18'));
    expect(larger.wheel.diameter).toBe(18);
    // Half the overall diameter: 17 in + 2 × 285 × 0.7 = 830.8 mm before, 18 in + … = 856.2 mm after.
    expect(larger.tyre.loadedRadius).toBe(Math.round(((398 * 856.2) / 830.8) * 10) / 10);
    const rim = sound(withWheelDiameter(FULL_MODEL, 16));
    expect(rim.tyre.size).toBe('LT285/70R16');
    const service = withWheelDiameter(withTyreSize(FULL_MODEL, '35x12.50R17LT'), 16);
    expect(sound(service).tyre.size).toBe('35x12.50R16LT');
  });

  it('leave a size that is none to the contract to refuse', () => {
    const read = readModel(withTyreSize(FULL_MODEL, '265/70'), 'a.json');
    expect(read.ok ? '' : read.error.path).toBe('tyre.size');
  });
});

it('sliders span the number they show, in steps it can be read back from', () => {
  const specs = fieldsOf(FULL_MODEL).flatMap((field) =>
    field.form === 'numbers' ? field.row.cells.map(({ spec }) => spec) : [],
  );
  const value = fc.double({ min: -2000, max: 2000, noNaN: true });
  fc.assert(
    fc.property(
      value,
      fc.constantFrom(...specs),
      fc.constantFrom('mm' as const, 'inch' as const, 'sixteenth' as const),
      (number, spec, unit) => {
        const { min, max } = slideOf(number, Math.round(number), spec, unit);
        const shown = toSlide(number, spec, unit);
        expect(min <= shown && shown <= max && min < max).toBe(true);
        expect(Math.abs(fromSlide(shown, spec, unit) - number)).toBeLessThan(1e-6);
        const text = shownText(number, spec, unit);
        expect(Math.abs(Number(text.replace('−', '-')) - shown)).toBeLessThanOrEqual(0.00051);
      },
    ),
  );
});
