/** Models from files and from the shelf of shipped ones, taken as designs beside the present one; what is refused is said. */
import { type OpenedFile, type Opening, openModelFile } from '../../files/open.ts';
import { isShapeName } from '../../mesh/names.ts';
import { notices } from '../../state/bench.ts';
import { designs } from '../../state/designs.ts';
import { chooseFiles } from '../files/choose.ts';

const KEY = 'compare-file';

export const ALL_TAKEN =
  'All four places are taken, yesterday’s counted: remove a design or let go of yesterday’s first.';

function say(text: string): void {
  notices.say({ key: KEY, kind: 'alert', text });
}

/** Takes one opened model. */
function take(opened: Opening): string | null {
  if (!opened.ok) return opened.message;
  const { model, origin } = opened;
  return designs.getState().add(model.name, model, origin)
    ? null
    : `${origin} was not taken. ${ALL_TAKEN}`;
}

/** Takes a model that comes from elsewhere; the present work stays as it is. */
export async function takeOpening(opening: Promise<Opening>): Promise<void> {
  notices.dismiss(KEY);
  const refusal = take(await opening);
  if (refusal !== null) say(refusal);
}

/** Takes every file that is a model. What is refused leaves the others, and the present work, as they are. */
export async function takeFiles(files: readonly OpenedFile[]): Promise<void> {
  notices.dismiss(KEY);
  const refusals: string[] = [];
  for (const file of files) {
    const refusal = isShapeName(file.name)
      ? `${file.name} is a mesh. Only models are compared.`
      : take(await openModelFile(file));
    if (refusal !== null) refusals.push(refusal);
  }
  if (refusals.length > 0) say(refusals.join(' '));
}

export function chooseDesigns(): void {
  chooseFiles('.json,application/json', (files) => void takeFiles([...files]));
}
