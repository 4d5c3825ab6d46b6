/** A stated loaded radius under another tyre. */
import type { Model } from '../model/model.ts';
import { parseTyreSize, tyreDimensions } from '../model/tyre.ts';

function overall(model: Model): number | null {
  const { tyre } = model;
  const isStated = tyre.diameter !== undefined && tyre.width !== undefined;
  if (!isStated && !parseTyreSize(tyre.size ?? '').ok) return null;
  return tyreDimensions(tyre, model.wheel).overallDiameter;
}

/**
 * `after` with the loaded radius `before` states kept in proportion to the overall diameter, to 0.1 mm: a taller tyre squats as
 * much in proportion (common practice, no source). A radius that is not stated follows the tyre by itself.
 */
export function withSquat(before: Model, after: Model): Model {
  const { loadedRadius } = before.tyre;
  const [was, is] = [overall(before), overall(after)];
  if (loadedRadius === undefined || was === null || is === null || was === is) return after;
  const scaled = Math.round(((loadedRadius * is) / was) * 10) / 10;
  return { ...after, tyre: { ...after.tyre, loadedRadius: scaled } };
}
