/** Takes files into the page's bench. */
import type { OpenedFile } from '../../files/open.ts';
import { createTaker } from '../../files/take.ts';
import { isShapeName } from '../../mesh/names.ts';
import { documentStore, notices, view } from '../../state/bench.ts';

export const taker = createTaker(documentStore, notices, async (files) => {
  const { meshLoader } = await import('../meshes/loader.ts');
  await meshLoader.open(files);
});

/** Takes files that were dropped on the page: as designs while the sheet that compares them is open, else into the bench. */
export async function takeDropped(files: readonly OpenedFile[]): Promise<void> {
  if (view.getState().work !== 'compare') return taker.files(files);
  const shapes = files.filter(({ name }) => isShapeName(name));
  if (shapes.length > 0) await taker.files(shapes);
  const { takeFiles } = await import('../compare/take.ts');
  await takeFiles(files.filter((file) => !shapes.includes(file)));
}
