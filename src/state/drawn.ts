/** The corners drawn of the page's bench; loaded with the sheet that shows them. */
import { startMonteCarloService } from '../worker/monteCarloService.ts';
import { documentStore } from './bench.ts';
import { createMonteCarlo } from './monteCarlo.ts';

export const monteCarlo = createMonteCarlo(documentStore, startMonteCarloService);
