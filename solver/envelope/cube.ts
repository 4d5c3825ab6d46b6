/**
 * How a surface passes through a cube whose eight corners are inside or outside. A corner's bits say whether it is at
 * the far side along x (1), y (2), z (4). An edge is named axis · 4 + u + 2v, its offsets u, v along the two next axes.
 */

/** The two corners of an edge, the one at the near side of its axis first. */
export const EDGE_CORNERS: readonly (readonly [number, number])[] = Array.from(
  { length: 12 },
  (_, edge) => {
    const axis = edge >> 2;
    const near = ((edge & 1) << ((axis + 1) % 3)) | (((edge >> 1) & 1) << ((axis + 2) % 3));
    return [near, near | (1 << axis)] as const;
  },
);

/** The four corners of each face, going round it. */
const FACES: readonly (readonly number[])[] = [0, 1, 2].flatMap((axis) => {
  const u = 1 << ((axis + 1) % 3);
  const v = 1 << ((axis + 2) % 3);
  return [0, 1 << axis].map((base) => [base, base | u, base | u | v, base | v]);
});

function edgeBetween(a: number, b: number): number {
  return EDGE_CORNERS.findIndex(
    ([near, far]) => (near === a && far === b) || (near === b && far === a),
  );
}

/** Sheets of the surface in a cube. */
export interface Sheets {
  readonly count: number;
  /** The sheet each edge belongs to; −1 where the surface does not cut it. */
  readonly ofEdge: Int8Array;
}

/** Joins the cut edges of a face in pairs; where all four are cut, about each corner that is inside. */
function pairsOf(face: readonly number[], inside: number): [number, number][] {
  const isIn = face.map((corner) => (inside >> corner) & 1);
  const edges = face.map((corner, i) => edgeBetween(corner, face[(i + 1) % 4]!));
  const cut = edges.filter((_, i) => isIn[i] !== isIn[(i + 1) % 4]);
  if (cut.length < 4) return cut.length === 2 ? [[cut[0]!, cut[1]!]] : [];
  return [0, 1, 2, 3]
    .filter((i) => isIn[i] === 1)
    .map((i): [number, number] => [edges[(i + 3) % 4]!, edges[i]!]);
}

function sheetsOf(inside: number): Sheets {
  const ofEdge = new Int8Array(12).fill(-1);
  const pairs = FACES.flatMap((face) => pairsOf(face, inside));
  let count = 0;
  for (const [start] of pairs) {
    if (ofEdge[start]! >= 0) continue;
    const open = [start];
    while (open.length > 0) {
      const edge = open.pop()!;
      if (ofEdge[edge]! >= 0) continue;
      ofEdge[edge] = count;
      for (const [a, b] of pairs) {
        if (a === edge) open.push(b);
        if (b === edge) open.push(a);
      }
    }
    count += 1;
  }
  return { count, ofEdge };
}

/** Sheets for every one of the 256 ways to be inside, corner 0 in bit 0. */
export const SHEETS: readonly Sheets[] = Array.from({ length: 256 }, (_, inside) =>
  sheetsOf(inside),
);
