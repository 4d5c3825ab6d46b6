/** Readings of the bench: as typed, fitted when they rest, tried with a ghost, never counted twice, kept. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type Fit, fitInSteps } from '../../solver/fit/fit.ts';
import { allSteps, type Model } from '../../solver/index.ts';
import { createDocument } from '../../src/state/document.ts';
import { type FitRow, newRow, readRow } from '../../src/state/fitRows.ts';
import { createFits } from '../../src/state/fits.ts';
import { keepFits } from '../../src/state/keepFits.ts';
import type { FitAnswer, FitRequest } from '../../src/worker/fitJob.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-factory');

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A bench whose work is done at once when it is asked for. */
function bench(model: Model = MODEL) {
  const documentStore = createDocument(model, 'half-ton-factory.json');
  const asked: FitRequest[] = [];
  const fits = createFits(documentStore, (answer: (answer: FitAnswer) => void) => ({
    ask(request) {
      asked.push(request);
      if (request.kind === 'cancel') return;
      const found = allSteps(fitInSteps(request.model, request.readings, request.heights));
      answer({ number: request.number, progress: 1, found });
    },
    stop: () => undefined,
  }));
  const rest = (): void => void vi.advanceTimersByTime(300);
  const type = (id: number, patch: Partial<Record<keyof FitRow, string>>): void => {
    const cells = Object.entries(patch).map(([name, text]) => [name, { text, unit: 'mm' }]);
    fits.change(id, Object.fromEntries(cells));
  };
  return { documentStore, asked, fits, rest, type };
}

function typed(text: Partial<Record<string, string>>, row = newRow(1, 'toe', MODEL)): FitRow {
  const cells = Object.entries(text).map(([name, words]) => [name, { text: words, unit: 'mm' }]);
  return { ...row, ...Object.fromEntries(cells) };
}

describe('readRow', () => {
  test('reads what was typed, at ride height and straight ahead where nothing was', () => {
    const model = { ...MODEL, travel: { ...MODEL.travel, ride: -12 } };
    expect(readRow(typed({ value: '0,2', plusMinus: '0.05' }), model)).toEqual({
      ok: true,
      reading: { quantity: 'toe', travel: -12, rack: 0, value: 0.2, plusMinus: 0.05 },
    });
    const inch = { ...typed({ value: '0.1' }), travel: { text: '2', unit: 'inch' } } as FitRow;
    expect(readRow(inch, model)).toMatchObject({ ok: true, reading: { travel: 50.8 } });
    const steer = newRow(2, 'steerAngle', MODEL);
    expect(readRow(typed({ value: '27' }, steer), MODEL)).toMatchObject({
      reading: { rack: MODEL.steering!.limit![1] },
    });
  });

  test.each([
    [{ value: '' }, 'value', null],
    [{ value: 'x' }, 'value', '“x” is not a number.'],
    [{ value: '120' }, 'value', 'Write degrees, at most 90.'],
    [
      { value: '1', plusMinus: '0' },
      'plusMinus',
      'Write at least 0.0001: nothing is read exactly.',
    ],
    [{ value: '1', travel: '9000' }, 'travel', 'No wheel or rack moves by 2000 mm or more.'],
  ])('of %j says what is wrong and where', (text, cell, why) => {
    expect(readRow(typed(text), MODEL)).toEqual({ ok: false, cell, why });
  });

  test('says of a part that is not there that it is not there', () => {
    const { coilover: _, ...bare } = MODEL;
    const row = typed({ value: '400' }, newRow(1, 'damperLength', MODEL));
    expect(readRow(row, MODEL)).toMatchObject({ ok: true });
    expect(readRow(row, bare)).toMatchObject({ ok: false, cell: null });
    const width = { ...newRow(1, 'width', MODEL), between: ['link', 'link'] } as FitRow;
    expect(readRow(typed({ value: '900' }, width), MODEL)).toMatchObject({ ok: true });
    const same = { ...newRow(1, 'distance', MODEL), between: ['link', 'link'] } as FitRow;
    expect(readRow(typed({ value: '400' }, same), MODEL)).toMatchObject({ ok: false, cell: null });
  });
});

describe('createFits', () => {
  test('fits when typing rests, what can be read alone, and only while it is watched', () => {
    const { fits, asked, rest, type } = bench();
    fits.add('toe');
    fits.add('camber');
    type(1, { value: '0.2', travel: '50' });
    rest();
    expect(asked).toEqual([]);
    const leave = fits.watch();
    expect(asked).toHaveLength(1);
    expect(fits.getState()).toMatchObject({ isRunning: false, asked: { rows: [1], putBack: 0 } });
    type(2, { value: '-0.5' });
    type(1, { value: '0.25' });
    expect(asked).toHaveLength(1);
    rest();
    expect(asked).toHaveLength(2);
    expect(fits.getState().asked?.rows).toEqual([1, 2]);
    // A text that reads the same asks nothing.
    type(1, { value: '0.250' });
    rest();
    expect(asked).toHaveLength(2);
    fits.change(2, { isLeftOut: true });
    rest();
    expect(fits.getState().asked?.rows).toEqual([1]);
    fits.change(2, { isLeftOut: false });
    fits.setHeights({ text: '0.1', unit: 'inch' });
    rest();
    expect(asked.at(-1)).toMatchObject({ heights: 2.54 });
    fits.setHeights({ text: '-1', unit: 'mm' });
    rest();
    expect(asked.at(-1)).toMatchObject({ heights: 0 });
    fits.remove([1, 2]);
    rest();
    expect(fits.getState()).toMatchObject({ found: null, rows: [] });
    fits.putBack();
    rest();
    expect(fits.getState().rows.map(({ id }) => id)).toEqual([1, 2]);
    expect(fits.getState().found).not.toBeNull();
    leave();
  });

  test('tries the fit with the ghost, and from fitted points begins where they were measured', () => {
    const { fits, documentStore, rest, type } = bench();
    fits.add('toe');
    type(1, { value: '0.6', travel: '50' });
    fits.watch();
    const first = fits.getState().found as Fit;
    const before = documentStore.getState().model;
    expect(fits.tryOn()).toBe(true);
    expect(documentStore.getState()).toMatchObject({ model: first.model, held: before });
    rest();
    expect(fits.getState().found).toBe(first);
    fits.keep();
    expect(documentStore.getState()).toMatchObject({ model: first.model, held: null });
    // The same reading again, with another: as if the points had never been fitted.
    fits.add('camber');
    type(2, { value: '-1' });
    rest();
    const both = fits.getState().found as Fit;
    expect(fits.getState().asked?.putBack).toBeGreaterThan(0);
    expect(both.readings[0]!.before).toBe(first.readings[0]!.before);
    // A point that is measured anew since stands as typed; the others go back all the same.
    documentStore.edit((model) => ({
      ...model,
      tieRod: { ...model.tieRod, inner: [0, 391, -48] },
    }));
    rest();
    const measured = fits.getState().asked!.measured;
    expect(measured.tieRod).toEqual({ ...before.tieRod, inner: [0, 391, -48] });
    expect(measured.lowerArm).toEqual(before.lowerArm);
  });

  test('takes back, and what was taken back is measured again', () => {
    const { fits, documentStore, rest, type } = bench();
    fits.add('toe');
    type(1, { value: '0.6', travel: '50' });
    fits.watch();
    const before = documentStore.getState();
    fits.tryOn();
    fits.takeBack();
    expect(documentStore.getState()).toMatchObject({ model: before.model, held: before.held });
    rest();
    expect(fits.getState().asked?.putBack).toBe(0);
    expect(fits.tryOn()).toBe(true);
  });

  test('keeps what was typed, wrong or right, and which points are fitted', () => {
    const texts = new Map<string, string>();
    const shelf = {
      read: (key: string) => texts.get(key) ?? null,
      write: (key: string, text: string) => {
        texts.set(key, text);
        return true;
      },
      remove: (key: string) => void texts.delete(key),
    };
    const { fits, type, documentStore, rest } = bench();
    keepFits(fits, shelf);
    fits.add('toe');
    fits.add('steerAngle');
    fits.add('caster');
    fits.change(2, { isLeftOut: true });
    type(1, { value: '0.6', travel: '50' });
    type(2, { value: '27x' });
    fits.remove([3]);
    fits.setState({ pasted: 'abc 3' });
    fits.setHeights({ text: 'x', unit: 'inch' });
    fits.watch();
    fits.tryOn();
    const later = bench(documentStore.getState().model);
    keepFits(later.fits, shelf);
    const { rows, removed, pasted, lineage } = later.fits.getState();
    expect(rows).toEqual(fits.getState().rows);
    expect(removed.map(({ quantity }) => quantity)).toEqual(['caster']);
    expect(pasted).toBe('abc 3');
    expect(later.fits.getState().heights).toEqual({ text: 'x', unit: 'inch' });
    expect(lineage).toEqual(fits.getState().lineage);
    later.fits.watch();
    rest();
    expect(later.fits.getState().asked?.measured).toEqual(MODEL);
    const take = keepFits(bench().fits, shelf);
    const before = texts.get('armscribe.fit');
    take('{"rows":[]}');
    expect(texts.get('armscribe.fit')).toBe(before);
    texts.set('armscribe.fit', '{"rows":[{"quantity":"nothing"},7],"lineage":3');
    const damaged = bench();
    keepFits(damaged.fits, shelf);
    expect(damaged.fits.getState().rows).toEqual([]);
  });
});
