/** Where a point of the page's bench may go, and what of it is on trial; loaded with the sheet that shows it. */
import { startWhereService } from '../worker/whereService.ts';
import { documentStore } from './bench.ts';
import { createTrials } from './trials.ts';
import { createWhere } from './where.ts';

export const where = createWhere(documentStore, startWhereService);

/** Trials by what is tried, in words. */
export const whereTrials = createTrials<string>(documentStore);
