import { expect, it } from 'vitest';
import { statedGap, wantedGap } from '../../solver/index.ts';
import { FULL_MODEL } from '../support/full-model.ts';

const asking = (required: Record<string, number>) => ({ ...FULL_MODEL, required });

it('takes the pair as stated in either order, else the default, else common practice', () => {
  expect(wantedGap(asking({ 'tieRod/wheel': 8, default: 5 }), 'tieRod', 'wheel')).toBe(8);
  expect(wantedGap(asking({ 'wheel/tieRod': 9, default: 5 }), 'tieRod', 'wheel')).toBe(9);
  expect(wantedGap(asking({ default: 5 }), 'tieRod', 'wheel')).toBe(5);
  expect(wantedGap(asking({ 'tieRod/wheel': 0 }), 'tieRod', 'wheel')).toBe(0);
  const { required: _, ...silent } = FULL_MODEL;
  expect(wantedGap(silent, 'tieRod', 'wheel')).toBe(6);
  expect(statedGap(silent, 'tieRod', 'wheel')).toBeUndefined();
});
