/** Run by tests/solver/allocation.test.ts, bundled, with the collector's trace on: poses by the million between two marks. */
import { readFileSync } from 'node:fs';
import {
  assemble,
  createMeasures,
  createPose,
  createRodGap,
  measureInto,
  parseModel,
  rodGapInto,
  solve,
} from '../../solver/index.ts';

const read = parseModel(readFileSync('models/half-ton-long-travel.json', 'utf8'), 'model');
if (!read.ok) throw new Error(read.error.wanted);
const corner = assemble(read.model);
const pose = createPose();
const measures = createMeasures();
const wheel = createRodGap(corner, 'wheel');
const tyre = createRodGap(corner, 'tyre');

function run(count: number): void {
  for (let i = 0; i < count; i += 1) {
    solve(corner, pose, ((i * 37) % 330) - 170, ((i * 53) % 180) - 90);
    measureInto(corner, pose, measures);
    rodGapInto(wheel, pose);
    rodGapInto(tyre, pose);
  }
}

run(200_000);
console.log('MARK');
run(400_000);
console.log('MARK');
