/** Where a point of the page's bench may go; loaded with the sheet that shows it. */
import { startWhereService } from '../worker/whereService.ts';
import { documentStore } from './bench.ts';
import { createWhere } from './where.ts';

export const where = createWhere(documentStore, startWhereService);
