/** What is on trial on the page's bench. */
import { documentStore } from './bench.ts';
import { createTrial } from './trial.ts';

export const trial = createTrial(documentStore);
