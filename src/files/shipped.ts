/** The models the bench comes with. Their names are in the page from the start, the models themselves come when asked for. */
import { formatModelError, parseModel } from '../../solver/index.ts';
import type { Opening } from './open.ts';

const names = import.meta.glob<string>('../../models/*.json', { import: 'name', eager: true });
const texts = import.meta.glob<string>('../../models/*.json', { query: '?raw', import: 'default' });

export interface Shipped {
  /** Such as "half-ton-factory.json". */
  readonly file: string;
  /** The name in the file. */
  readonly name: string;
  readonly open: () => Promise<Opening>;
}

function fileOf(address: string): string {
  return address.slice(address.lastIndexOf('/') + 1);
}

async function openShipped(file: string, load: () => Promise<string>): Promise<Opening> {
  let text: string;
  try {
    text = await load();
  } catch {
    return { ok: false, message: `${file} could not be fetched. Is the bench still being served?` };
  }
  const read = parseModel(text, file);
  if (!read.ok) return { ok: false, message: formatModelError(read.error) };
  return { ok: true, model: read.model, origin: file };
}

/** Every shipped model, by name. */
export const SHIPPED: readonly Shipped[] = Object.entries(texts)
  .map(([address, load]) => {
    const file = fileOf(address);
    return { file, name: names[address] ?? file, open: () => openShipped(file, load) };
  })
  .sort((a, b) => a.name.localeCompare(b.name, 'en'));
