/** Alignment settings of the page's bench; loaded with the sheet that shows them. */
import { startAlignService } from '../worker/alignService.ts';
import { createAlignment } from './alignment.ts';
import { documentStore } from './bench.ts';
import { meshes } from './meshes.ts';

export const alignment = createAlignment(documentStore, meshes, startAlignService);
