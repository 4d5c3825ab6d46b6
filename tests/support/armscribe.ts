/** Runs the real command line as a child process. */
import { spawnSync } from 'node:child_process';
import { ROOT } from './sources.ts';

export interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a program in the repository's root and waits for it. */
export function run(program: string, words: readonly string[], cwd: string = ROOT): Run {
  const { status, stdout, stderr } = spawnSync(program, words, {
    cwd,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { status, out: stdout, err: stderr };
}

/** `armscribe` with these words. */
export function armscribe(...words: readonly string[]): Run {
  return run(process.execPath, ['src/cli/launch.js', ...words]);
}
