import { expect, it } from 'vitest';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { followRide, liftedBy, liftOf, liftRange } from '../../src/state/ride.ts';
import { FULL_MODEL } from '../support/full-model.ts';

const MODEL = { ...FULL_MODEL, travel: { bump: 80, droop: 100 } };

it('lowers the wheel in the body’s frame by a lift', () => {
  expect(liftedBy(MODEL, 50).travel.ride).toBe(-50);
  expect(liftedBy(MODEL, -20).travel.ride).toBe(20);
  expect(liftOf(liftedBy(MODEL, 50))).toBe(50);
  expect(Object.is(liftOf(MODEL), 0)).toBe(true);
  expect(liftedBy(MODEL, 0)).toBe(MODEL);
  expect(liftRange(MODEL)).toEqual([-80, 100]);
});

it('takes a bench that stands at ride height along, through undo too, and leaves one that does not', () => {
  const document = createDocument(MODEL, 'test.json');
  const inputs = createInputs(document);
  followRide(document, inputs);
  document.edit((model) => liftedBy(model, 50));
  expect(inputs.getState().travel).toBe(-50);
  document.undo();
  expect(inputs.getState().travel).toBe(0);
  inputs.setTravel(10);
  document.redo();
  expect(inputs.getState().travel).toBe(10);
});
