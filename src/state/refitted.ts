/** Readings of the page's bench and the fit to them; loaded with the sheet that shows them. */
import { startFitService } from '../worker/fitService.ts';
import { documentStore } from './bench.ts';
import { createFits } from './fits.ts';
import { FITS_KEY, keepFits } from './keepFits.ts';
import { createShelf } from './shelf.ts';

export const fits = createFits(documentStore, startFitService);

const takeText = keepFits(
  fits,
  createShelf(() => localStorage),
);

// Another tab keeps its readings in the same place: both show the same ones, and neither overwrites what the other added.
addEventListener('storage', ({ key, newValue }) => {
  if (key === FITS_KEY && newValue !== null) takeText(newValue);
});
