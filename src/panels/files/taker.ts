/** Takes files into the page's bench. */
import { createTaker } from '../../files/take.ts';
import { documentStore, notices } from '../../state/bench.ts';

export const taker = createTaker(documentStore, notices, async (files) => {
  const { meshLoader } = await import('../meshes/loader.ts');
  await meshLoader.open(files);
});
