/** Better points of the page's bench, and the lists that ask for them; loaded with the sheet that shows them. */
import { improveWorkers, startImproveService } from '../worker/improveService.ts';
import { documentStore } from './bench.ts';
import { createImprove } from './improve.ts';
import { createImprovePlan } from './improvePlan.ts';
import { keepImprove } from './keepImprove.ts';
import { meshes } from './meshes.ts';
import { createShelf } from './shelf.ts';

export const improve = createImprove(
  documentStore,
  meshes,
  startImproveService,
  improveWorkers(navigator.hardwareConcurrency),
);

export const improvePlan = createImprovePlan();

keepImprove(
  improvePlan,
  createShelf(() => localStorage),
);
