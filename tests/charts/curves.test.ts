/** Curves: the sweep against single poses, what the page sweeps and when, and the file of it. */
import { describe, expect, test } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  MEASURE_KEYS,
  Measure,
  measureInto,
  solve,
} from '../../solver/index.ts';
import { createRodGaps, createSweep, sweepInto } from '../../solver/sweep.ts';
import { axisNames, curvesCsv } from '../../src/charts/curveTable.ts';
import { sweepRow, sweepRows } from '../../src/charts/sweepRows.ts';
import { createCurves } from '../../src/state/curves.ts';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { createPosed } from '../../src/state/posed.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-factory');
const corner = assemble(MODEL);

describe('sweepInto', () => {
  test.each(['travel', 'rack'] as const)('over %s is what each pose measures alone', (along) => {
    const sweep = createSweep(9);
    sweepInto(corner, createRodGaps(corner), sweep, along, [-60, 65], 20);
    expect([sweep.axis[0], sweep.axis.at(-1)]).toEqual([-60, 65]);
    const pose = createPose();
    const measures = createMeasures();
    sweep.axis.forEach((place, i) => {
      const [travel, rack] = along === 'travel' ? [place, 20] : [20, place];
      expect(solve(corner, pose, travel, rack)).toBe('reached');
      measureInto(corner, pose, measures);
      for (const key of MEASURE_KEYS) {
        const alone = measures[Measure[key]]!;
        const swept = sweep.columns[key][i]!;
        if (Number.isFinite(alone)) expect(swept, key).toBeCloseTo(alone, 8);
        else expect(swept, key).toBeNaN();
      }
    });
  });

  test('has gaps where nothing is reached, and is right again after them', () => {
    const sweep = createSweep(41);
    sweepInto(corner, createRodGaps(corner), sweep, 'travel', [-300, 300], 0);
    const reached = [...sweep.reached];
    expect(reached[0]).toBe(0);
    expect(reached[20]).toBe(1);
    sweep.reached.forEach((isReached, i) => {
      expect(Number.isNaN(sweep.columns.camber[i]!)).toBe(isReached === 0);
      expect(Number.isNaN(sweep.columns.wheelGap[i]!)).toBe(isReached === 0);
    });
  });
});

describe('createCurves', () => {
  function bench() {
    const documentStore = createDocument(MODEL, 'half-ton-factory.json');
    const inputs = createInputs(documentStore);
    const posed = createPosed(documentStore, inputs);
    return { documentStore, inputs, curves: createCurves(posed, inputs) };
  }

  test('sweeps again for another rack or design, not for another travel', () => {
    const { documentStore, inputs, curves } = bench();
    curves.current();
    const first = curves.version();
    inputs.setTravel(40);
    curves.current();
    expect(curves.version()).toBe(first);
    inputs.setRack(30);
    const toe = curves.current().present.columns.toe[50];
    expect(curves.version()).toBe(first + 1);
    documentStore.edit((model) => ({ ...model, hub: { ...model.hub, toe: 1 } }));
    expect(curves.current().present.columns.toe[50]).not.toBe(toe);
    expect(curves.version()).toBe(first + 2);
  });

  test('keeps the held design’s curve beside the present one’s, in buffers that stay', () => {
    const { documentStore, curves } = bench();
    const { present } = curves.current();
    documentStore.hold();
    documentStore.edit((model) => ({ ...model, hub: { ...model.hub, camber: 1 } }));
    const { held } = curves.current();
    expect(curves.current().present).toBe(present);
    const difference = present.columns.camber[50]! - held!.columns.camber[50]!;
    expect(difference).toBeCloseTo(1.2, 2);
    documentStore.release();
    expect(curves.current().held).toBeNull();
  });
});

describe('curvesCsv', () => {
  const sweep = createSweep(5);
  sweepInto(corner, createRodGaps(corner), sweep, 'travel', [-300, 100], 0);

  test('names units and signs, gives nine digits that count, and nothing out of reach', () => {
    const lines = curvesCsv('travel', 0, ['camber', 'wheelGap'], sweep, null).trimEnd().split('\n');
    expect(lines[0]).toBe(
      '"travel [mm; + wheel up, - wheel down]","rack [mm; + to the left, - to the right]",' +
        '"camber [deg; + top leans out, - top leans in]","tie rod to wheel [mm; + apart, - overlap]"',
    );
    expect(lines).toHaveLength(6);
    expect(lines[1]).toBe('-300,0,,');
    const last = lines[5]!.split(',').map(Number);
    expect(last.slice(0, 2)).toEqual([100, 0]);
    for (const [i, key] of [
      [2, 'camber'],
      [3, 'wheelGap'],
    ] as const) {
      const exact = sweep.columns[key][4]!;
      expect(Math.abs(last[i]! / exact - 1)).toBeLessThan(5e-9);
      expect(lines[5]!.split(',')[i]!.replace(/[-.]/g, '').length).toBeLessThanOrEqual(9);
    }
  });

  test('sets the held design beside each', () => {
    const [first] = curvesCsv('rack', 12, ['damperLength'], sweep, sweep).split('\n');
    expect(first).toContain('damper length [mm');
    expect(first).toContain('damper length, held [mm');
  });
});

test('axisNames(along, key, unit) says what is counted in what', () => {
  expect(axisNames('travel', 'camber', 'mm')).toEqual(['travel, mm', 'camber, °']);
  expect(axisNames('rack', 'wheelGap', 'sixteenth')).toEqual(['rack, in', 'tie rod to wheel, in']);
  expect(axisNames('travel', 'motionRatio', 'mm')[1]).toBe(sweepRow('motionRatio').label);
});

describe('sweepRows', () => {
  test('leaves out what the model has no parts for, and names every measure', () => {
    const keys = sweepRows(MODEL).map(({ key }) => key);
    expect(keys).toContain('motionRatio');
    const { coilover: _, ...bare } = MODEL;
    const fewer = sweepRows(bare).map(({ key }) => key);
    expect(fewer).not.toContain('motionRatio');
    expect(fewer).toContain('camber');
    for (const key of MEASURE_KEYS) expect(sweepRow(key).label, key).not.toBe('');
  });
});
