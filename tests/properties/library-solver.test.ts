import fc from 'fast-check';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { assemble, createPose, Slot, solve } from '../../solver/index.ts';
import { withoutSettings } from '../../src/state/posed.ts';
import { buildable, inRange, place } from '../support/arbitraries.ts';
import { type NineEquations, nineEquations } from '../support/nineEquations.ts';

const EQUATIONS = Float64Array.from({ length: 9 }, (_, i) => i);
const STEPS = 8;

/** One step of the path to the pose by Levenberg–Marquardt with its own numerical derivatives. */
function libraryStep(
  system: NineEquations,
  from: number[],
  travel: number,
  rack: number,
): number[] {
  let values = from;
  for (const damping of [1e-3, 1e-9]) {
    const result = levenbergMarquardt(
      { x: EQUATIONS, y: new Float64Array(9) },
      (parameters) => {
        const residuals = system.residuals(parameters, travel, rack);
        return (i: number) => residuals[i]!;
      },
      {
        initialValues: values,
        damping,
        gradientDifference: 1e-4,
        centralDifference: true,
        maxIterations: 60,
        errorTolerance: 1e-24,
        improvementThreshold: 1e-12,
      },
    );
    values = Array.from(result.parameterValues);
  }
  return values;
}

describe('the same nine equations, solved by a general-purpose library', () => {
  it('give the same ball joints to 1e-6 mm on random corners', () => {
    const pose = createPose();
    let compared = 0;
    fc.assert(
      fc.property(buildable, place, (drawn, where) => {
        const model = withoutSettings(drawn);
        const [travel, rack] = inRange(model, where);
        const outcome = solve(assemble(model), pose, travel, rack);
        if (outcome !== 'reached') return;
        const system = nineEquations(model);
        let x = system.start;
        for (let step = 1; step <= STEPS; step += 1) {
          x = libraryStep(system, x, (travel * step) / STEPS, (rack * step) / STEPS);
        }
        const residual = Math.max(...system.residuals(x, travel, rack).map(Math.abs));
        // Where the library itself has not arrived there is nothing to compare.
        if (residual > 1e-8) return;
        compared += 1;
        const ours = [Slot.lower, Slot.upper, Slot.outer].flatMap((at) => [
          ...pose.data.slice(at, at + 3),
        ]);
        for (let i = 0; i < 9; i += 1) expect(Math.abs(ours[i]! - x[i]!)).toBeLessThan(1e-6);
        const centre = system.wheelCentre(x);
        for (let i = 0; i < 3; i += 1) {
          expect(Math.abs(pose.data[Slot.centre + i]! - centre[i]!)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 300, seed: 20261125 },
    );
    expect(compared).toBeGreaterThan(250);
  });
});
