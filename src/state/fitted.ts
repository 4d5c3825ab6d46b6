/** The candidates of the page's bench and their gaps; loaded with the sheet that shows them. */
import { startFitmentService } from '../worker/fitmentService.ts';
import { documentStore } from './bench.ts';
import { createFitment } from './fitment.ts';
import { createFittedGaps } from './fittedGaps.ts';
import { keepFitment } from './keepFitment.ts';
import { meshes } from './meshes.ts';
import { createShelf } from './shelf.ts';

export const fitment = createFitment(documentStore);
export const fittedGaps = createFittedGaps(meshes, startFitmentService);

keepFitment(
  fitment,
  createShelf(() => localStorage),
);
