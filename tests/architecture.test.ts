import { describe, expect, it } from 'vitest';
import {
  importsOf,
  readSource,
  repositoryFiles,
  sourcesUnder,
  withoutComments,
} from './support/sources.ts';

const inside = (folder: string) => (name: string) => name.startsWith(`${folder}/`);
const packaged = (...names: string[]) => {
  return (name: string) => names.some((wanted) => name === wanted || name.startsWith(`${wanted}/`));
};
const node = (name: string) => name.startsWith('node:');
const three = packaged('three', 'three-mesh-bvh', '@react-three/fiber', '@react-three/drei');
const react = packaged('react');

type Test = (name: string) => boolean;

/** Which way the arrows point: `only` lists all that a folder may import, `never` what it may not. */
const RULES: { folder: string; only?: Test[]; never?: Test[]; except?: RegExp }[] = [
  { folder: 'solver', only: [inside('solver')] },
  { folder: 'src', never: [inside('tests'), inside('dist'), packaged('numeric', 'fast-check')] },
  {
    folder: 'src/cli',
    only: ['src/cli', 'src/mesh', 'src/paper', 'src/words', 'solver']
      .map(inside)
      .concat(node, packaged('rolldown')),
  },
  // The command line and workers read meshes too: nothing of the page.
  {
    folder: 'src/mesh',
    only: ['src/mesh', 'solver'].map(inside).concat(packaged('three', 'three-mesh-bvh')),
  },
  // Papers are made by the page and by the command line: strings and numbers only.
  {
    folder: 'src/paper',
    only: ['src/paper', 'src/words', 'solver']
      .map(inside)
      .concat((name) => /^src\/charts\/(curveTable|sweepRows|ticks)\.ts$/.test(name)),
  },
  { folder: 'src/serve', only: [inside('src/serve'), node, packaged('vite')] },
  {
    folder: 'src/state',
    never: [
      three,
      packaged('react-dom', 'leva', 'uplot'),
      ...['scene', 'panels', 'charts', 'cli', 'serve'].map((name) => inside(`src/${name}`)),
    ],
  },
  // React comes into the state only by its binding: a hook (use….ts) or a component.
  { folder: 'src/state', never: [react], except: /\/(use[A-Z]\w*\.tsx?|\w+\.tsx)$/ },
  {
    folder: 'src/files',
    never: [
      three,
      packaged('react-dom', 'leva', 'uplot'),
      ...['scene', 'panels', 'charts', 'cli', 'serve'].map((name) => inside(`src/${name}`)),
    ],
  },
  {
    folder: 'src/scene',
    never: [
      packaged('leva', 'uplot'),
      ...['panels', 'charts', 'cli', 'serve'].map((name) => inside(`src/${name}`)),
    ],
  },
  {
    folder: 'src/charts',
    never: [three, packaged('leva'), ...['scene', 'panels'].map((name) => inside(`src/${name}`))],
  },
  { folder: 'src/panels', never: [three, packaged('uplot'), inside('src/scene')] },
];

/** What a page runs knows no Node; what Node runs is `src/cli` and `src/serve`. */
const PAGE = (path: string) => !inside('src/cli')(path) && !inside('src/serve')(path);

describe('imports', () => {
  it.each(RULES)('of $folder go the right way (rule %#)', ({ folder, only, never, except }) => {
    const wrong = sourcesUnder(folder)
      .filter((path) => !except?.test(path))
      .flatMap((path) =>
        importsOf(path, readSource(path))
          .filter((name) => only?.every((test) => !test(name)) || never?.some((test) => test(name)))
          .map((name) => `${path} imports ${name}`),
      );
    expect(wrong).toEqual([]);
  });

  it('of the page name nothing of Node, the command line or the server', () => {
    const wrong = sourcesUnder('src')
      .filter(PAGE)
      .flatMap((path) =>
        importsOf(path, readSource(path))
          .filter((name) => node(name) || !PAGE(name))
          .map((name) => `${path} imports ${name}`),
      );
    expect(wrong).toEqual([]);
  });

  it('are really scanned', () => {
    const solver = sourcesUnder('solver');
    expect(solver).toContain('solver/model/model.ts');
    expect(sourcesUnder('src')).toContain('src/main.tsx');
    for (const { folder } of RULES) expect(sourcesUnder(folder), folder).not.toEqual([]);
    const found = solver.flatMap((path) => importsOf(path, readSource(path)));
    expect(found.filter(inside('solver')).length).toBeGreaterThan(solver.length / 2);
  });

  it('are found in every form', () => {
    const text = `
      import './side.css';
      import type { A } from "../b/a.ts";
      export * from './c.ts';
      const late = import('leva'); // import './commented.ts'
      new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
      import work from './work.ts?worker';
      import {
        many,
      } from 'three/addons/many.js';`;
    expect(importsOf('src/x/file.ts', text).sort()).toEqual(
      [
        'src/x/side.css',
        'src/b/a.ts',
        'src/x/c.ts',
        'leva',
        'src/x/worker.ts',
        'src/x/work.ts',
        'three/addons/many.js',
      ].sort(),
    );
  });
});

describe('the solver', () => {
  // The same input must give the same answer, and nothing may be said but by the answer.
  const IMPURE = /\bMath\.random\b|\bDate\b|\bconsole\b|\bperformance\b|\bglobalThis\b/;

  it('uses no chance, no clock and no console', () => {
    const wrong = sourcesUnder('solver').filter((path) =>
      IMPURE.test(withoutComments(readSource(path))),
    );
    expect(wrong).toEqual([]);
  });

  it('would be caught using them, but not speaking of them', () => {
    expect(IMPURE.test(withoutComments("const a = 'x // y'; Math.random();"))).toBe(true);
    expect(IMPURE.test(withoutComments('new Date(); /* fine */'))).toBe(true);
    expect(IMPURE.test(withoutComments('// no Date here\nupdateDates();'))).toBe(false);
  });
});

describe('the repository', () => {
  // Put together from halves, so that this file does not hold them itself.
  const FORBIDDEN = [
    ['npm', 'js.org'],
    ['npm', 'js.com'],
    ['npm', 'mirror'],
    ['yarn', 'pkg.com'],
    ['deb.', 'debian'],
    ['security.', 'debian'],
    ['pypi', '.org'],
    ['proxy.', 'golang'],
    ['un', 'pkg.com'],
    ['js', 'delivr'],
    ['/wo', 'rk/'],
    ['shared', '/spec'],
  ].map((halves) => halves.join(''));

  const files = repositoryFiles();

  it('names no registry host and no folder of one machine', () => {
    const wrong = files.flatMap((path) => {
      const text = readSource(path).toLowerCase();
      return FORBIDDEN.filter((word) => text.includes(word)).map((word) => `${path}: ${word}`);
    });
    expect(wrong).toEqual([]);
  });

  it('is really scanned', () => {
    for (const path of [
      'package.json',
      'package-lock.json',
      '.ci/run',
      'tests/architecture.test.ts',
    ]) {
      expect(files).toContain(path);
    }
    expect(files.some((path) => path.includes('node_modules'))).toBe(false);
  });
});
