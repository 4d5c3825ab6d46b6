/** The designs kept beside the present one on the page's bench; loaded behind the first picture. */
import { saveText } from '../files/save.ts';
import { documentStore, notices } from './bench.ts';
import { createDesigns } from './designStore.ts';
import { DESIGNS_KEY, keepDesigns } from './keepDesigns.ts';
import { createArchive, createShelf } from './shelf.ts';

export const designs = createDesigns(documentStore);

const takeText = keepDesigns(designs, {
  shelf: createShelf(() => localStorage),
  archive: createArchive(),
  notices,
  now: Date.now,
  saveText,
});

// Another tab keeps its designs in the same place: both show the same ones, and neither overwrites what the other added.
addEventListener('storage', ({ key, newValue }) => {
  if (key === DESIGNS_KEY && newValue !== null) takeText(newValue);
});
