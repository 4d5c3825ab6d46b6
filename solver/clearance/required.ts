/** The least clearance wanted between two parts. */
import type { Model } from '../model/model.ts';

/** Least clearance wanted where the model states none, mm. Common practice, no source. */
export const USUAL_GAP = 6;

/** What the model's `required` states for the pair, in either order, or else its default; undefined when it states neither. */
export function statedGap(model: Model, partA: string, partB: string): number | undefined {
  const { required } = model;
  return (
    required?.[`${partA}/${partB}`] ?? required?.[`${partB}/${partA}`] ?? required?.['default']
  );
}

/** The least clearance wanted between two parts, such as tieRod and wheel, mm. */
export function wantedGap(model: Model, partA: string, partB: string): number {
  return statedGap(model, partA, partB) ?? USUAL_GAP;
}
