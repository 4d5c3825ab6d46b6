/** The regular drive of the linkage: α and β are travel and rack. */
import type { Drive, Rows, Solution } from './rates.ts';
import { determinantOf } from './rates.ts';
import { constant, inverse, minus, multiple, product, type Taylor } from './taylor.ts';

/** Half-sizes of a cell, mm of travel and of rack. */
export interface HalfSizes {
  readonly travel: number;
  readonly rack: number;
}

/** Shares and turns per mm of travel (a) and of rack (b). */
type PerMillimetre = Pick<Solution, 'share' | 'turn'>;

/** Solves for a rod of constant length and the height's growth by eliminating the spin; null where its lever may be 0. */
function solveByLever({ arms, spun, pull }: Rows): PerMillimetre | null {
  const lever = inverse(spun.rod);
  if (lever === null) return null;
  const drift = product(arms.rod, lever);
  const climb = inverse(minus(arms.height, product(spun.height, drift)));
  if (climb === null) return null;
  const steer = product(pull, lever);
  const back = multiple(-1, product(product(steer, spun.height), climb));
  return {
    share: { a: climb, b: back },
    turn: { a: multiple(-1, product(drift, climb)), b: minus(steer, product(drift, back)) },
  };
}

/** The same by the determinant, which is 0 in singular poses only. */
function solveByDeterminant({ arms, spun, pull }: Rows): PerMillimetre | null {
  const room = inverse(determinantOf(arms, spun));
  if (room === null) return null;
  return {
    share: {
      a: product(spun.rod, room),
      b: multiple(-1, product(product(pull, spun.height), room)),
    },
    turn: {
      a: multiple(-1, product(arms.rod, room)),
      b: product(product(pull, arms.height), room),
    },
  };
}

const NONE: Taylor = constant(0);

export function regularDrive(half: HalfSizes): Drive {
  return {
    mark: null,
    solve: (rows) => {
      const solved = solveByLever(rows) ?? solveByDeterminant(rows);
      if (solved === null) return null;
      const { share, turn } = solved;
      return {
        share: { a: multiple(half.travel, share.a), b: multiple(half.rack, share.b) },
        turn: { a: multiple(half.travel, turn.a), b: multiple(half.rack, turn.b) },
        travel: { a: constant(half.travel), b: NONE },
        rack: { a: NONE, b: constant(half.rack) },
      };
    },
  };
}
