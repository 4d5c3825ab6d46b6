/** The page's designs at the present inputs; loaded with what draws them. */
import { documentStore, inputs, posed } from './bench.ts';
import { createBeside } from './beside.ts';
import { designs } from './designs.ts';
import { requestFrame } from './frame.ts';

export const beside = createBeside(posed, documentStore, inputs, designs);

designs.subscribe(requestFrame);
