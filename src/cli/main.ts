/** The command line: finds the verb, writes its answer, and turns outcomes into exit statuses. */
import { quoted } from '../../solver/index.ts';
import { align } from './align.ts';
import { check } from './check.ts';
import { clearance } from './clearance.ts';
import { compare } from './compare.ts';
import { pose } from './pose.ts';
import { BadInput, type Status, type Verb, type Write } from './refusal.ts';
import { report } from './report.ts';
import { sweep } from './sweep.ts';
import { uncertainty } from './uncertainty.ts';

const VERBS: readonly Verb[] = [pose, sweep, clearance, compare, align, uncertainty, report, check];

const HELP = `armscribe VERB MODEL [options]

The double-wishbone front corner, from a model file. Lengths mm, angles degrees.

${VERBS.map(({ summary }) => `  ${summary}`).join('\n')}

armscribe VERB --help tells more of one verb.
Exit status: 0 done; 1 done, and the answer is "no"; 2 bad input.
`;

/** Exit status of a defect of this program: none of the contract's, so that it is never taken for an answer. */
const DEFECT = 70;

function answer(words: readonly string[], write: Write): Status {
  const [name, ...rest] = words;
  if (name === '--help' || name === '-h' || name === 'help') {
    write(HELP);
    return 0;
  }
  const names = VERBS.map((each) => each.name).join(', ');
  if (name === undefined) {
    throw new BadInput(`armscribe: VERB: found nothing, wanted one of ${names}, or --help`);
  }
  const verb = VERBS.find((each) => each.name === name);
  if (!verb) {
    throw new BadInput(`armscribe: VERB: found ${quoted(name)}, wanted one of ${names}, or --help`);
  }
  const options = rest.includes('--') ? rest.slice(0, rest.indexOf('--')) : rest;
  if (options.includes('--help') || options.includes('-h')) {
    write(verb.help);
    return 0;
  }
  return verb.run(rest, write);
}

/** Runs one command and sets the exit status; never ends the process, so that pipes drain. */
export function run(words: readonly string[]): void {
  // A reader that has seen enough (head) closes the pipe: not an error of ours.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    process.stderr.write(`armscribe: standard output: ${error.message}\n`);
    process.exit(DEFECT);
  });
  try {
    process.exitCode = answer(words, (text) => process.stdout.write(text));
  } catch (thrown) {
    if (thrown instanceof BadInput) {
      process.stderr.write(`${thrown.lines.join('\n')}\n`);
      process.exitCode = 2;
    } else {
      process.stderr.write(`armscribe: a defect of this program: ${(thrown as Error).stack}\n`);
      process.exitCode = DEFECT;
    }
  }
}
