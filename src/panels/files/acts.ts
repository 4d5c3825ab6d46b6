/** What the files menu and its keys do. */
import { saveModel } from '../../files/save.ts';
import { documentStore, notices } from '../../state/bench.ts';
import { ALL_FILES } from './accepted.ts';
import { chooseFiles } from './choose.ts';
import { elsewhere } from './elsewhere.ts';
import { taker } from './taker.ts';

/** A model names its mesh files and holds none of them. */
export function save(): void {
  const { model } = documentStore.getState();
  saveModel(model);
  elsewhere.noteSaved(model);
  const files = new Set((model.obstacles ?? []).flatMap((one) => ('file' in one ? one.file : [])));
  if (files.size === 0) return;
  const text = `The saved model names ${[...files].join(', ')}: keep what it names in the same folder.`;
  notices.say({ key: 'saved-meshes', kind: 'status', text });
}

/** Opens the file chooser for models and meshes. */
export function choose(): void {
  chooseFiles(ALL_FILES, (files) => void taker.files(files));
}
