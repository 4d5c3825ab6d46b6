/** The maps of the page's bench. */
import { startMapService } from '../worker/mapService.ts';
import { documentStore } from './bench.ts';
import { createLockMaps } from './map.ts';
import { meshes } from './meshes.ts';

export const lockMaps = createLockMaps(documentStore, meshes, startMapService);
