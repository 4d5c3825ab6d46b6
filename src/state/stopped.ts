/** What stops the wheel of the page's bench. */
import { startStopsService } from '../worker/stopsService.ts';
import { documentStore, inputs } from './bench.ts';
import { meshes } from './meshes.ts';
import { createStops } from './stops.ts';

export const stops = createStops(documentStore, inputs, meshes, startStopsService);
