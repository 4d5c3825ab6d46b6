/** The swept space of the page's bench. */
import { startSweptService } from '../worker/sweptService.ts';
import { documentStore } from './bench.ts';
import { createSwept } from './swept.ts';

export const swept = createSwept(documentStore, startSweptService);
