/** Verbs of the contract that this version does not have: they say so instead of failing as unknown. */
import { BadInput, type Verb } from './refusal.ts';

function later(name: string, summary: string): Verb {
  return {
    name,
    summary: `${summary} (comes with a later version)`,
    help: `armscribe ${name}\n\nThis verb comes with a later version.\n`,
    run: () => {
      throw new BadInput(
        `armscribe ${name}: found a verb that comes with a later version, wanted pose, sweep, clearance or check`,
      );
    },
  };
}

export const align: Verb = later('align', 'align MODEL      the settings that reach the targets');
