/** armscribe uncertainty MODEL: how well every answer is known, and what spoils it most. */
import {
  assemble,
  createSensitivities,
  GRADES,
  inputSigmas,
  type Knowledge,
  type KnownKey,
  knowledgeAt,
  type Model,
  type MonteCarlo,
  monteCarlo,
  poseReport,
  quoted,
  withGrade,
} from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';
import type { Answer } from './columns.ts';
import { loadModel } from './files.ts';
import { unreachedLine } from './print.ts';
import { parseMillimetres } from './range.ts';
import { BadInput, type Verb } from './refusal.ts';
import { GRADE_NAMES, labelOf, uncertaintyTable } from './uncertaintyTable.ts';
import { about, oneFile, sortWords, type Words } from './words.ts';

const help = `armscribe uncertainty MODEL [--travel T] [--rack R] [--grade GRADE] [--draws N] [--json]

How well every measure of a pose is known from what the model states in tolerance, and
which points spoil it most. Uncertainties are combined as in JCGM 100 (the Guide to the
expression of uncertainty in measurement): exact derivatives, inputs independent of each
other. Every ± is one standard uncertainty: it holds in about two of three cases, twice
as much in 95 of 100.
  --travel T     wheel travel from the design pose, mm (default the ride height)
  --rack R       rack displacement, mm (default 0)
  --grade GRADE  takes for what is not stated how well a coordinate or an angle is
                 measured by one of ${GRADE_NAMES}
                 (common practice, no source)
  --draws N      checks it with N corners drawn at random (JCGM 101): the interval that
                 holds 95 of 100 of them, and whether the value ± agrees with it
  --json         one object with unrounded numbers
What is not stated is taken as exact. Exit status 1 when the pose cannot be reached.
`;

const OPTIONS = {
  travel: { value: 'a number of mm' },
  rack: { value: 'a number of mm' },
  grade: { value: `one of ${GRADE_NAMES}` },
  draws: { value: 'a whole number' },
  json: {},
} as const;

const LEAST_DRAWS = 100;
const MOST_DRAWS = 1_000_000;

function drawsOf({ values }: Words): number | null {
  const given = values.get('draws');
  if (given === undefined) return null;
  const draws = Number(given);
  if (/^\d+$/.test(given) && draws >= LEAST_DRAWS && draws <= MOST_DRAWS) return draws;
  throw new BadInput(
    `${about('uncertainty', '--draws')}: found ${quoted(given)}, wanted a whole number from ${LEAST_DRAWS} to ${MOST_DRAWS}`,
  );
}

function graded(model: Model, { values }: Words): Model {
  const given = values.get('grade');
  if (given === undefined) return model;
  const grade = GRADES.find(({ name }) => name === given);
  if (grade !== undefined) return withGrade(model, grade);
  throw new BadInput(
    `${about('uncertainty', '--grade')}: found ${quoted(given)}, wanted one of ${GRADE_NAMES}`,
  );
}

function json(knowledge: Knowledge, drawn: MonteCarlo | null): string {
  const { travel, rack, inputs, sigmas } = knowledge;
  const answers = Object.entries(knowledge.answers ?? {}).map(([key, answer]) => {
    const { value, uncertainty, slopes } = answer;
    const unit = labelOf(key as KnownKey).unit || '1';
    // A slope that does not exist is null in JSON.
    return [key, { unit, value, uncertainty, slopes: [...slopes] }];
  });
  return `${JSON.stringify(
    {
      travel,
      rack,
      inputs: inputs.map(({ key, unit, label }, i) => ({ key, unit, label, sigma: sigmas[i] })),
      answers: Object.fromEntries(answers),
      ...(drawn === null ? {} : { drawn }),
    },
    null,
    2,
  )}\n`;
}

export const uncertainty: Verb = {
  name: 'uncertainty',
  summary: 'uncertainty MODEL  how well each measure is known, and which points spoil it',
  help,
  run: (words, write) => {
    const sorted = sortWords('uncertainty', words, OPTIONS);
    const file = oneFile('uncertainty', sorted);
    const draws = drawsOf(sorted);
    const read = (name: 'travel' | 'rack'): number | undefined => {
      const given = sorted.values.get(name);
      return given === undefined
        ? undefined
        : parseMillimetres(given, about('uncertainty', `--${name}`));
    };
    const [stated, rack] = [read('travel'), read('rack') ?? 0];
    const model = graded(loadModel(file), sorted);
    const travel = stated ?? rideTravel(model.travel);
    const corner = assemble(model);
    const made = createSensitivities(corner);
    const knowledge = knowledgeAt(made, inputSigmas(model, made.inputs), travel, rack);
    const isJson = sorted.flags.has('json');
    if (knowledge.answers === null) {
      const answer: Answer = { ...poseReport(corner, travel, rack) };
      write(isJson ? `${JSON.stringify(answer, null, 2)}\n` : `${unreachedLine(answer)}\n`);
      return 1;
    }
    const drawn = draws === null ? null : monteCarlo(model, { draws, travel, rack });
    write(isJson ? json(knowledge, drawn) : uncertaintyTable(model, knowledge, drawn));
    return 0;
  },
};
