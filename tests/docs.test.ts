import { execSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const read = (name: string) => readFileSync(`${ROOT}${name}`, 'utf8');
const readme = read('README.md');
const developers = read('DEVELOPERS.md');

interface Manifest {
  scripts: Record<string, string>;
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
}
const manifest = JSON.parse(read('package.json')) as Manifest;

describe('README', () => {
  it('prints what its command-line example really prints', () => {
    const [, command, output] =
      /```\n(npm run --silent armscribe[^\n]*)\n```\n\n```\n([^`]*)```/.exec(readme) ?? [];
    expect(command).toBeDefined();
    const printed = execSync(command!, {
      cwd: ROOT,
      encoding: 'utf8',
      env: { ...process.env, npm_config_loglevel: 'silent' },
    });
    expect(printed).toBe(output);
  });

  it('names files that are there', () => {
    for (const [, path] of readme.matchAll(/(?:`|\()((?:models|tests)\/[\w./-]+)(?:`|\))/g)) {
      expect(existsSync(`${ROOT}${path}`), path).toBe(true);
    }
  });
});

describe('both guides', () => {
  it('name only scripts that package.json has', () => {
    const named = [
      ...`${readme}${developers}`.matchAll(/`?npm (?:run (?:--silent )?)?([a-z:]+)/g),
    ].map(([, name]) => name!);
    expect(named.length).toBeGreaterThan(5);
    for (const name of named) expect(Object.keys(manifest.scripts), name).toContain(name);
  });
});

describe('DEVELOPERS', () => {
  it('names only files and folders that are there', () => {
    const folders = [
      '',
      'solver/',
      'solver/certify/',
      'solver/linkage/',
      'solver/measures/',
      'solver/model/',
      'src/',
      'src/scene/',
      'src/scene/drawings/',
      'src/cli/',
    ];
    const named = [...developers.matchAll(/`((?:[\w-]+\/)*[\w-]+(?:\.tsx?|\.js|\/))`/g)].map(
      ([, name]) => name!,
    );
    expect(named.length).toBeGreaterThan(20);
    for (const name of named) {
      expect(
        folders.some((folder) => existsSync(`${ROOT}${folder}${name}`)),
        name,
      ).toBe(true);
    }
  });

  it('says what every dependency is for, and of no other', () => {
    const packages = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies });
    const table = developers.slice(developers.indexOf('## Dependencies'));
    const silent = packages.filter((name) => !name.startsWith('@types/') && !table.includes(name));
    expect(silent.filter((name) => !['@vitejs/plugin-react'].includes(name))).toEqual([]);
  });
});
