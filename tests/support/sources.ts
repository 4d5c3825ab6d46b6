// Reads the repository's own files: which there are, and what each imports.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT: string = fileURLToPath(new URL('../..', import.meta.url));

/** Built, installed or private to the version control: never part of what is written here. */
const LEFT_OUT = new Set(['.git', 'node_modules', 'dist', 'coverage']);

function walk(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (LEFT_OUT.has(entry.name)) return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? walk(path) : [relative(ROOT, path).split(sep).join('/')];
  });
}

/** Every file of the repository, committed or not yet, as paths from its root. */
export function repositoryFiles(): string[] {
  if (!existsSync(join(ROOT, '.git'))) return walk(ROOT).sort();
  const words = ['ls-files', '-z', '--cached', '--others', '--exclude-standard'];
  const listed = execFileSync('git', words, { cwd: ROOT, encoding: 'utf8' }).split('\0');
  return [...new Set(listed)].filter((path) => path && existsSync(join(ROOT, path))).sort();
}

/** The text of a file, given by its path from the root. */
export function readSource(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

/** The programs under a folder: TypeScript and JavaScript. */
export function sourcesUnder(folder: string): string[] {
  return repositoryFiles().filter(
    (path) => path.startsWith(`${folder}/`) && /\.(ts|tsx|js)$/.test(path),
  );
}

/** The text without its comments. Strings are stepped over, so that `'https://…'` stays whole. */
export function withoutComments(text: string): string {
  const pieces =
    /('(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`)|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g;
  return text.replace(pieces, (_, string?: string) => string ?? ' ');
}

const IMPORTS = [
  /\bfrom\s*['"]([^'"]+)['"]/g,
  /\bimport\s*\(?\s*['"]([^'"]+)['"]/g,
  /\brequire\s*\(\s*['"]([^'"]+)['"]/g,
  /\bnew\s+URL\(\s*['"](\.{1,2}\/[^'"]*\.\w+)['"]\s*,\s*import\.meta\.url/g,
];

/**
 * What a text imports, in any form (static, dynamic, re-export, side effect, worker address).
 * Relative names become paths from the root; packages stay as they are written.
 */
export function importsOf(path: string, text: string): string[] {
  const bare = withoutComments(text);
  const names = IMPORTS.flatMap((form) => [...bare.matchAll(form)].map((match) => match[1] ?? ''));
  return [...new Set(names)].map((name) => {
    const [plain = name] = name.split('?');
    return plain.startsWith('.') ? posix.normalize(posix.join(dirname(path), plain)) : plain;
  });
}
