/** What is to be moved: chosen in the sheet, or by the handle that is taken in the scene. */
import { expect, test } from 'vitest';
import { view } from '../../src/state/bench.ts';
import { choosePoint, moving } from '../../src/state/moving.ts';

test('a handle that is taken chooses its point and leaves the way and the distance', () => {
  moving.setState({ what: { kind: 'point', path: 'tieRod.inner', axis: 1 }, by: -4 });
  view.setState({ touched: 'upperArm.rearPivot' });
  const what = { kind: 'point', path: 'upperArm.rearPivot', axis: 1 };
  expect(moving.getState()).toEqual({ what, by: -4 });
  choosePoint('tieRod.outer');
  view.setState({ lit: 'point:hub.face' });
  expect(moving.getState().what).toMatchObject({ path: 'tieRod.outer' });
});
