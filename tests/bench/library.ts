/** The same poses by a plain Newton on the nine equations, its linear systems solved by a general-purpose library. */
import numeric from 'numeric';
import type { Model } from '../../solver/index.ts';
import { nineEquations } from '../support/nineEquations.ts';

export function makeLibraryNewton(model: Model): (travel: number, rack: number) => number[] {
  const system = nineEquations(model);
  let x = system.start;
  return (travel, rack) => {
    for (let count = 0; count < 20; count += 1) {
      const residuals = system.residuals(x, travel, rack);
      if (residuals.every((value) => Math.abs(value) < 1e-10)) break;
      const step = numeric.solve(system.jacobian(x, travel, rack), residuals) as number[];
      x = x.map((value, i) => value - step[i]!);
    }
    return x;
  };
}
