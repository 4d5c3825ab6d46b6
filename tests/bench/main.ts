/** `npm run bench`: how long a pose takes, as ratios of one run. No test asserts any of this. */
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import {
  assemble,
  certify,
  createMeasures,
  createPose,
  createRodGap,
  createSensitivities,
  type Model,
  measureInto,
  monteCarlo,
  parseModel,
  placeParts,
  poseRates,
  rodGapInto,
  Slot,
  sensitivityAt,
  solve,
  watchedPairs,
} from '../../solver/index.ts';
import { makeFloor } from './floor.ts';
import { makeLibraryNewton } from './library.ts';
import { nanoseconds, shuffled } from './measure.ts';
import { meshRows } from './meshes.ts';

const TRAVELS = 81;
const RACKS = 61;
const COUNT = TRAVELS * RACKS;
const ROUNDS = 25;
const FRAME = 1e9 / 60;

function factory(): Model {
  const read = parseModel(
    readFileSync('models/half-ton-factory.json', 'utf8'),
    'half-ton-factory.json',
  );
  if (!read.ok) throw new Error(read.error.wanted);
  return read.model;
}

/** The map's poses: row after row with travel rising and falling (each pose next to the last), and shuffled. */
function poses(model: Model) {
  const [left, right] = model.steering!.limit!;
  const { bump, droop } = model.travel;
  const warm = { travels: new Float64Array(COUNT), racks: new Float64Array(COUNT) };
  for (let j = 0; j < RACKS; j += 1) {
    for (let i = 0; i < TRAVELS; i += 1) {
      const row = j % 2 === 0 ? i : TRAVELS - 1 - i;
      warm.travels[j * TRAVELS + i] = -droop + ((bump + droop) * row) / (TRAVELS - 1);
      warm.racks[j * TRAVELS + i] = left + ((right - left) * j) / (RACKS - 1);
    }
  }
  const order = shuffled(COUNT);
  const cold = {
    travels: Float64Array.from(order, (at) => warm.travels[at]!),
    racks: Float64Array.from(order, (at) => warm.racks[at]!),
  };
  return { warm, cold };
}

const model = factory();
const corner = assemble(model);
const { fixed } = corner.linkage;
const { warm, cold } = poses(model);
const pose = createPose();
const measures = createMeasures();
const gap = createRodGap(corner, 'wheel');
const floor = makeFloor(model);
const newton = makeLibraryNewton(model);
let sink = 0;

type Places = typeof warm;

function each({ travels, racks }: Places, work: () => void): () => void {
  return () => {
    for (let i = 0; i < COUNT; i += 1) {
      solve(corner, pose, travels[i]!, racks[i]!);
      work();
    }
    sink += pose.data[Slot.centre]!;
  };
}

const time = (work: () => void) => nanoseconds(COUNT, ROUNDS, work);
const nothing = () => {};
const rows: [string, number][] = [
  [
    'floor: one hand-written loop, warm',
    time(() => (sink += floor(warm.travels, warm.racks, false))),
  ],
  ['floor: the same, cold', time(() => (sink += floor(cold.travels, cold.racks, true)))],
  ['positions, warm from a neighbour', time(each(warm, nothing))],
  ['positions, cold in shuffled order', time(each(cold, nothing))],
  [
    'positions and all first derivatives, warm',
    time(each(warm, () => poseRates(fixed, pose.data))),
  ],
  [
    'positions and all first derivatives, cold',
    time(each(cold, () => poseRates(fixed, pose.data))),
  ],
  ['every measure, warm', time(each(warm, () => measureInto(corner, pose, measures)))],
  ['every measure, cold', time(each(cold, () => measureInto(corner, pose, measures)))],
  [
    'a pose of the map: positions, parts, exact rod-to-wheel gap',
    time(
      each(warm, () => {
        placeParts(corner, pose.data);
        rodGapInto(gap, pose);
      }),
    ),
  ],
];
const library = nanoseconds(COUNT, 5, () => {
  for (let i = 0; i < COUNT; i += 1) sink += newton(warm.travels[i]!, warm.racks[i]!)[0]!;
});
const assembly = nanoseconds(200, 9, () => {
  for (let i = 0; i < 200; i += 1) sink += assemble(model).linkage.homeDeterminant;
});

const sensitivities = createSensitivities(corner);
const differentiated = nanoseconds(20, 9, () => {
  for (let i = 0; i < 20; i += 1) {
    const at = sensitivityAt(sensitivities, 4 * i - 40, 10);
    if (typeof at !== 'string') sink += at.slopes[0]!;
  }
});
const draws = nanoseconds(1, 3, () => {
  sink += monteCarlo(model)!.answers.length;
});

const proofs = nanoseconds(1, 5, () => {
  const proven = assemble(model);
  sink += certify(proven, watchedPairs(proven)).length;
});

const [floorWarm, floorCold, warmPose, coldPose] = rows.map(([, value]) => value) as [
  number,
  number,
  number,
  number,
];
const map = rows.at(-1)![1] * COUNT;

const line = (label: string, value: string) =>
  console.log(`${label.padEnd(62)} ${value.padStart(12)}`);
console.log(`Armscribe bench, ${new Date().toISOString().slice(0, 10)}`);
console.log(
  `${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.versions.node}, ${COUNT} poses a round\n`,
);
for (const [label, value] of rows) line(label, `${value.toFixed(0)} ns`);
line('plain Newton on nine equations, library linear solver, warm', `${library.toFixed(0)} ns`);
line('assembly of a model', `${(assembly / 1000).toFixed(0)} µs`);
line(
  `every measure differentiated by ${sensitivities.inputs.length} inputs, a pose`,
  `${(differentiated / 1000).toFixed(0)} µs`,
);
line('every measure of 10 000 corners drawn at random', `${(draws / 1e9).toFixed(1)} s`);
line('all-pairs proof of a model', `${(proofs / 1e6).toFixed(0)} ms`);
for (const [label, value] of meshRows(corner)) {
  line(label, value > 1e6 ? `${(value / 1e6).toFixed(0)} ms` : `${(value / 1000).toFixed(0)} µs`);
}
console.log('');
line('positions warm / floor warm (wanted ≤ 1.5)', (warmPose / floorWarm).toFixed(2));
line('positions cold / floor cold (wanted ≤ 1.5)', (coldPose / floorCold).toFixed(2));
line('library Newton / positions warm (wanted ≥ 25)', (library / warmPose).toFixed(1));
line('81 × 61 map with gap / one 60 Hz frame (wanted < 1)', (map / FRAME).toFixed(2));
line('all-pairs proof / one second (wanted < 1)', (proofs / 1e9).toFixed(2));
if (!Number.isFinite(sink)) throw new Error('A pose of the bench is not finite.');
