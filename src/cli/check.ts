/** armscribe check FILE…: says whether model files are sound. */
import { escaped, formatModelError } from '../../solver/index.ts';
import { openModel } from './files.ts';
import { BadInput, type Verb } from './refusal.ts';
import { about, sortWords } from './words.ts';

const help = `armscribe check FILE…

Says whether model files are sound: one line "FILE: sound: NAME" for each.
If any is not: one line on standard error for each that is not, naming the
file, the path in it, what was found and what is wanted; exit status 2.
`;

export const check: Verb = {
  name: 'check',
  summary: 'check FILE…        says whether model files are sound',
  help,
  run: (words, write) => {
    const { files } = sortWords('check', words, {});
    if (files.length === 0) {
      throw new BadInput(
        `${about('check', 'FILE')}: found nothing, wanted at least one model file`,
      );
    }
    const results = files.map(openModel);
    const faults = results.flatMap((result) => (result.ok ? [] : [formatModelError(result.error)]));
    if (faults.length > 0) throw new BadInput(...faults);
    results.forEach((result, index) => {
      if (result.ok)
        write(`${escaped(files[index] ?? '')}: sound: ${escaped(result.model.name)}\n`);
    });
    return 0;
  },
};
