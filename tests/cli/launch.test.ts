/** The starter: builds what it runs when a source has changed, and says so in one line when it cannot. */
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Run, run } from '../support/armscribe.ts';
import { ROOT } from '../support/sources.ts';

const copy = mkdtempSync(join(tmpdir(), 'armscribe-'));
const cache = join(copy, 'node_modules', '.cache', 'armscribe');

beforeAll(() => {
  for (const name of ['package.json', 'solver', 'src', 'models']) {
    cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  }
});
afterAll(() => rmSync(copy, { recursive: true }));

function start(...words: string[]): Run {
  return run(process.execPath, ['src/cli/launch.js', ...words], copy);
}

test('before npm ci: one line, exit status 2, and npm’s own build step does not fail', () => {
  const { status, out, err } = start('--help');
  expect({ status, out }).toEqual({ status: 2, out: '' });
  expect(err).toMatch(/^armscribe: cannot build the command line \(.*\); run npm ci first\n$/);
  expect(start('--build')).toEqual({ status: 0, out: '', err: '' });
});

test('after it: builds once, and again only when a source has changed', () => {
  mkdirSync(join(copy, 'node_modules'));
  for (const name of ['rolldown', '@rolldown', '@oxc-project', 'three', 'three-mesh-bvh']) {
    symlinkSync(join(ROOT, 'node_modules', name), join(copy, 'node_modules', name));
  }
  expect(start('--build')).toEqual({ status: 0, out: '', err: '' });
  const [built = ''] = readdirSync(cache);
  const bundle = join(cache, built);
  writeFileSync(bundle, `${readFileSync(bundle, 'utf8')}\nprocess.stdout.write('kept\\n');\n`);
  expect(start('check', 'models/half-ton-factory.json').out).toMatch(/^kept\n.*: sound: /);

  const source = join(copy, 'src', 'cli', 'main.ts');
  writeFileSync(
    source,
    readFileSync(source, 'utf8').replace('armscribe VERB MODEL', 'armscribe WORD MODEL'),
  );
  // An older time than the bundle's: a change is a change, whichever way the clock went.
  utimesSync(source, 1, 1);
  expect(start('--help').out).toMatch(/^armscribe WORD MODEL/);
  expect(readdirSync(cache)).toHaveLength(1);
  expect(readdirSync(cache)).not.toEqual([built]);
});

test('where the cache cannot be written it runs all the same', () => {
  rmSync(cache, { recursive: true });
  writeFileSync(cache, 'a file where the folder should be');
  expect(start('--help').out).toMatch(/^armscribe WORD MODEL/);
});
