import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { FULL_MODEL } from '../support/full-model.ts';

const number = fc.double({ noDefaultInfinity: false, noNaN: false });

it('stands within travel and steering lock, whatever it is asked', () => {
  const inputs = createInputs(createDocument(FULL_MODEL, 'full.json'));
  fc.assert(
    fc.property(number, number, (travel, rack) => {
      const before = inputs.getState();
      inputs.move(travel, rack);
      const { travel: t, rack: r } = inputs.getState();
      // The full model: 110 mm of droop, 105 of bump, rack from −72 to 70.
      expect(t >= -110 && t <= 105 && r >= -72 && r <= 70).toBe(true);
      if (Number.isNaN(travel) || Number.isNaN(rack)) expect(inputs.getState()).toBe(before);
      else if (travel >= -110 && travel <= 105) expect(t).toBe(travel);
    }),
  );
});

it('starts at the ride height and follows a model whose range has shrunk', () => {
  const documentStore = createDocument(FULL_MODEL, 'full.json');
  const inputs = createInputs(documentStore);
  expect(inputs.getState()).toEqual({ travel: -15, rack: 0, playing: null });
  inputs.move(100, -72);
  documentStore.edit((model) => ({
    ...model,
    travel: { bump: 40, droop: 30, ride: 10 },
    steering: { limit: [-20, 25] },
  }));
  expect(inputs.getState()).toMatchObject({ travel: 40, rack: -20 });
  documentStore.edit(({ steering: _, ...model }) => model);
  expect(inputs.getState()).toMatchObject({ travel: 40, rack: 0 });
});

it('reaches a ride height outside the swept travel', () => {
  const documentStore = createDocument(FULL_MODEL, 'full.json');
  const inputs = createInputs(documentStore);
  documentStore.edit((model) => ({ ...model, travel: { bump: 40, droop: 30, ride: -55 } }));
  inputs.move(-100, 0);
  expect(inputs.getState().travel).toBe(-55);
});
