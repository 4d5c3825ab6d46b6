/** Readings of the page's bench and the fit to them; loaded with the sheet that shows them. */
import { startFitService } from '../worker/fitService.ts';
import { documentStore } from './bench.ts';
import { createFits } from './fits.ts';
import { keepFits } from './keepFits.ts';
import { createShelf } from './shelf.ts';

export const fits = createFits(documentStore, startFitService);

keepFits(
  fits,
  createShelf(() => localStorage),
);
