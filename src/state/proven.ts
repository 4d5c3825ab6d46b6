/** The proofs of the page's bench. */
import { startProofService } from '../worker/proofService.ts';
import { documentStore } from './bench.ts';
import { meshes } from './meshes.ts';
import { createProofs } from './proofs.ts';

export const proofs = createProofs(documentStore, meshes, startProofService);
