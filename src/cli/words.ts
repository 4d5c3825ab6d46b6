/** The words after a verb: model files and options. */
import { quoted } from '../../solver/index.ts';
import { BadInput } from './refusal.ts';

/** The options a verb knows; those with a value name what it is. */
export type OptionTable = Readonly<Record<string, { readonly value?: string }>>;

export interface Words {
  readonly files: readonly string[];
  /** Options given with a value, without their dashes. */
  readonly values: ReadonlyMap<string, string>;
  /** Options given that take none. */
  readonly flags: ReadonlySet<string>;
}

/** The beginning of every message about one verb's words. */
export function about(verb: string, name: string): string {
  return `armscribe ${verb}: ${name}`;
}

function listed(options: OptionTable): string {
  return Object.entries(options)
    .map(([name, { value }]) => (value === undefined ? `--${name}` : `--${name} ${value}`))
    .join(', ');
}

/** Sorts words one by one; what does not fit ends it with a refusal. */
class Sorter {
  readonly files: string[] = [];
  readonly values: Map<string, string> = new Map();
  readonly flags: Set<string> = new Set();
  private readonly verb: string;
  private readonly options: OptionTable;
  private readonly rest: string[];

  constructor(verb: string, words: readonly string[], options: OptionTable) {
    this.verb = verb;
    this.options = options;
    this.rest = [...words];
  }

  sort(): Words {
    for (let word = this.rest.shift(); word !== undefined; word = this.rest.shift()) {
      if (word === '--') this.files.push(...this.rest.splice(0));
      else if (word === '-' || !word.startsWith('-')) this.files.push(word);
      else this.option(word);
    }
    return this;
  }

  private refuse(dashed: string, found: string, wanted: string): never {
    const shown = quoted(dashed).slice(1, -1);
    throw new BadInput(`${about(this.verb, shown)}: found ${found}, wanted ${wanted}`);
  }

  private option(word: string): void {
    const [dashed = '', inline] = word.split(/=(.*)/s);
    const name = dashed.slice(2);
    if (!dashed.startsWith('--') || !Object.hasOwn(this.options, name)) {
      const known = listed(this.options);
      const wanted = known === '' ? 'model files and no option' : `one of ${known}`;
      this.refuse(dashed, 'an unknown option', wanted);
    }
    if (this.values.has(name) || this.flags.has(name)) {
      this.refuse(dashed, 'the option twice', 'it once');
    }
    const wanted = this.options[name]?.value;
    if (wanted !== undefined) this.values.set(name, this.value(dashed, inline, wanted));
    else if (inline !== undefined) this.refuse(dashed, `the value ${quoted(inline)}`, 'none');
    else this.flags.add(name);
  }

  /** The value behind "=", or else the next word, which may begin with a minus but not with two. */
  private value(dashed: string, inline: string | undefined, wanted: string): string {
    const value = inline ?? (this.rest[0]?.startsWith('--') ? '' : this.rest.shift());
    return value || this.refuse(dashed, 'no value', wanted);
  }
}

/** Sorts the words; an option's value may follow it or stand behind "=", and what follows a lone "--" is a file. */
export function sortWords(verb: string, words: readonly string[], options: OptionTable): Words {
  return new Sorter(verb, words, options).sort();
}

/** The one model file a verb works on. */
export function oneFile(verb: string, { files }: Words): string {
  const [file, second] = files;
  if (file === undefined) {
    throw new BadInput(`${about(verb, 'MODEL')}: found nothing, wanted the name of a model file`);
  }
  if (second !== undefined) {
    throw new BadInput(
      `${about(verb, 'MODEL')}: found ${files.length} words, wanted one model file`,
    );
  }
  return file;
}
