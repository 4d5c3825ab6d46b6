/** The smallest cures of the page's bench; loaded with the sheets that show them. */
import { startCureService } from '../worker/cureService.ts';
import { documentStore } from './bench.ts';
import { createCures } from './cures.ts';
import { meshes } from './meshes.ts';

export const cures = createCures(documentStore, meshes, startCureService);
