/** What can be said of a mesh of triangles by itself: whether it is closed, and how much it holds. */

export interface Mesh {
  readonly positions: ArrayLike<number>;
  readonly triangles: ArrayLike<number>;
}

/** Edges that are not run through exactly once each way: none on a closed surface that touches itself nowhere. */
export function openEdges({ triangles, positions }: Mesh): number {
  const vertices = positions.length / 3;
  const runs = new Map<number, number>();
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k += 1) {
      const from = triangles[i + k]!;
      const to = triangles[i + ((k + 1) % 3)]!;
      const key = from < to ? from * vertices + to : to * vertices + from;
      // One way counts 1, the other 256: a closed edge counts 257.
      runs.set(key, (runs.get(key) ?? 0) + (from < to ? 1 : 256));
    }
  }
  let open = 0;
  for (const run of runs.values()) if (run !== 257) open += 1;
  return open;
}

/** Volume inside a closed surface, mm³; negative when it faces inwards. Sum of a·(b × c)/6 over all triangles. */
export function volumeOf({ positions, triangles }: Mesh): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i]!;
    const b = 3 * triangles[i + 1]!;
    const c = 3 * triangles[i + 2]!;
    sum +=
      positions[a]! *
        (positions[b + 1]! * positions[c + 2]! - positions[b + 2]! * positions[c + 1]!) +
      positions[a + 1]! * (positions[b + 2]! * positions[c]! - positions[b]! * positions[c + 2]!) +
      positions[a + 2]! * (positions[b]! * positions[c + 1]! - positions[b + 1]! * positions[c]!);
  }
  return sum / 6;
}
