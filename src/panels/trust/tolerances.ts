/** The ± that a model states, by path, and models that state others. */
import type { Model } from '../../../solver/index.ts';
import { plainPath } from '../../../solver/model/sound/names.ts';

/** The key of `tolerance` that speaks of a path, however its indices are written; the path itself if none does. */
function keyOf(model: Model, path: string): string {
  const keys = Object.keys(model.tolerance ?? {});
  return keys.find((key) => plainPath(key) === path) ?? path;
}

/** What the file states of a path itself ("default" for all coordinates that state none of their own), or null. */
export function statedOf(model: Model, path: string): number | null {
  return model.tolerance?.[keyOf(model, path)] ?? null;
}

/** A model with the ± of a path stated, or, with null, not stated. Without any left, no `tolerance` is kept. */
export function withStated(model: Model, path: string, plusMinus: number | null): Model {
  const key = keyOf(model, path);
  if (plusMinus !== null) return { ...model, tolerance: { ...model.tolerance, [key]: plusMinus } };
  const { [key]: _, ...others } = model.tolerance ?? {};
  const { tolerance: __, ...rest } = model;
  return Object.keys(others).length === 0 ? rest : { ...model, tolerance: others };
}
