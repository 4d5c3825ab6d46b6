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
import { createBeside } from '../../src/state/beside.ts';
import { createCurves } from '../../src/state/curves.ts';
import { createDesigns } from '../../src/state/designStore.ts';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { createPosed } from '../../src/state/posed.ts';
import { parseCsv } from '../support/csv.ts';
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
    const designs = createDesigns(documentStore);
    const beside = createBeside(posed, documentStore, inputs, designs);
    return { documentStore, inputs, designs, curves: createCurves(posed, inputs, beside) };
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

  test('keeps the curves of yesterday’s and of named designs beside the present one’s, in buffers that stay', () => {
    const { documentStore, inputs, designs, curves } = bench();
    const { present } = curves.current();
    documentStore.hold();
    const tilted = { ...MODEL, hub: { ...MODEL.hub, camber: (MODEL.hub.camber ?? 0) + 2 } };
    designs.getState().add('tilted', tilted);
    documentStore.edit((model) => ({ ...model, hub: { ...model.hub, camber: 1 } }));
    const { beside } = curves.current();
    expect(beside.map(({ design }) => design.name)).toEqual(['yesterday', 'tilted']);
    expect(curves.current().present).toBe(present);
    const camber = [present, ...beside.map(({ sweep }) => sweep)].map(
      ({ columns }) => columns.camber[50]!,
    );
    expect(camber[0]! - camber[1]!).toBeCloseTo(1.2, 2);
    expect(camber[2]! - camber[1]!).toBeCloseTo(2, 2);
    // Shorter travel ends its curve sooner.
    const short = { ...tilted, travel: { bump: 50, droop: 50 } };
    designs.getState().add('short', short);
    const { axis, reached } = curves.current().beside[2]!.sweep;
    expect([...reached].map(Boolean)).toEqual([...axis].map((mm) => Math.abs(mm) <= 50));
    designs.getState().remove('C');
    // Another rack sweeps all of them; hiding one leaves its buffer to the next.
    const toe = beside[1]!.sweep.columns.toe[50];
    inputs.setRack(30);
    expect(curves.current().beside[1]!.sweep.columns.toe[50]).not.toBe(toe);
    designs.getState().show('B', false);
    documentStore.release();
    expect(curves.current().beside).toEqual([]);
  });
});

describe('curvesCsv', () => {
  const sweep = createSweep(5);
  sweepInto(corner, createRodGaps(corner), sweep, 'travel', [-300, 100], 0);

  test('names units and signs, gives nine digits that count, and nothing out of reach', () => {
    const lines = curvesCsv('travel', 0, ['camber', 'wheelGap'], sweep, []).trimEnd().split('\n');
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

  test('sets every design beside each, by its name', () => {
    const other = { name: 'B, the kit', sweep };
    const lines = parseCsv(curvesCsv('rack', 12, ['damperLength', 'camber'], sweep, [other]));
    expect(lines[0]!.slice(2).map((name) => name.replace(/ \[.*/, ''))).toEqual([
      'damper length',
      'damper length, B, the kit',
      'camber',
      'camber, B, the kit',
    ]);
    for (const line of lines) expect(line).toHaveLength(6);
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
