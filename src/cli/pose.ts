/** armscribe pose MODEL: one pose. */
import { assemble, poseReport } from '../../solver/index.ts';
import { type Answer, isReached } from './columns.ts';
import { loadModel } from './files.ts';
import { inputs, poseTable, unreachedLine } from './print.ts';
import { parseMillimetres } from './range.ts';
import type { Verb } from './refusal.ts';
import { about, oneFile, sortWords } from './words.ts';

const help = `armscribe pose MODEL [--travel T] [--rack R] [--json]

Solves one pose and prints every measure of it, with its sign in words.
  --travel T   wheel travel from the design pose, mm, positive in bump (default 0)
  --rack R     rack displacement, mm, positive moves the tie rod to the left (default 0)
  --json       one object with unrounded numbers instead of the table
Exit status 1 when the pose cannot be reached.
`;

const OPTIONS = {
  travel: { value: 'a number of mm' },
  rack: { value: 'a number of mm' },
  json: {},
} as const;

export const pose: Verb = {
  name: 'pose',
  summary: 'pose MODEL         one pose: camber, caster, toe and every other measure',
  help,
  run: (words, write) => {
    const sorted = sortWords('pose', words, OPTIONS);
    const read = (name: 'travel' | 'rack') =>
      parseMillimetres(sorted.values.get(name) ?? '0', about('pose', `--${name}`));
    const file = oneFile('pose', sorted);
    const [travel, rack] = [read('travel'), read('rack')];
    const model = loadModel(file);
    const answer: Answer = { ...poseReport(assemble(model), travel, rack) };
    if (sorted.flags.has('json')) write(`${JSON.stringify(answer, null, 2)}\n`);
    else if (isReached(answer)) write(poseTable(model.name, answer));
    else write(`${inputs({ travel, rack })}\n${unreachedLine(answer)}\n`);
    return isReached(answer) ? 0 : 1;
  },
};
