/** Run by tests/solver/allocation.test.ts, bundled, with the collector's trace on: poses by the million between two marks. */
import { readFileSync } from 'node:fs';
import {
  assemble,
  createMeasures,
  createPairGap,
  createPose,
  createRodGap,
  measureInto,
  pairGapInto,
  parseModel,
  rodGapInto,
  solve,
  watchedPairs,
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

const pairs = watchedPairs(corner).map(createPairGap);

/** Every pair of the corner in every pose. */
function runPairs(count: number): void {
  for (let i = 0; i < count; i += 1) {
    solve(corner, pose, ((i * 37) % 330) - 170, ((i * 53) % 180) - 90);
    measureInto(corner, pose, measures);
    for (let at = 0; at < pairs.length; at += 1) pairGapInto(pairs[at]!, pose);
  }
}

run(200_000);
console.log('MARK');
run(400_000);
console.log('MARK');
runPairs(6_000);
console.log('MARK');
runPairs(12_000);
console.log('MARK');
