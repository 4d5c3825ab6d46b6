/** How well the page's bench is known; loaded behind the first picture. */
import { startSpreadService } from '../worker/spreadService.ts';
import { documentStore, inputs } from './bench.ts';
import { createPlusMinus } from './plusMinus.ts';
import { createShelf } from './shelf.ts';
import { showKnown } from './showKnown.ts';
import { createSpreads } from './spreads.ts';

export const plusMinus = createPlusMinus(
  documentStore,
  createShelf(() => localStorage),
);
export const spreads = createSpreads(documentStore, inputs, plusMinus, startSpreadService);
showKnown(spreads);
