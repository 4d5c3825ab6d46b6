// `npm test`: every check and every test, each step by name, and one plain line at the end.
// Plain JavaScript and no package until the first step has installed them.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { install, runNpm } from '../src/serve/install.js';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const CACHE = join(ROOT, 'node_modules', '.cache');

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */
/** @typedef {{ name: string, script: string, kind: 'check' | 'tests', after?: string }} Step */

/** @type {Step[]} */
const STEPS = [
  { name: 'Format', script: 'test:format', kind: 'check' },
  { name: 'Lint', script: 'test:lint', kind: 'check' },
  { name: 'Types', script: 'test:types', kind: 'check' },
  { name: 'Unit tests', script: 'test:unit', kind: 'tests' },
  { name: 'Build', script: 'build', kind: 'check' },
  { name: 'Browser tests', script: 'test:browser', kind: 'tests', after: 'Build' },
];

/**
 * A check counts as one.
 * @param {string} script
 * @returns {Count}
 */
function runCheck(script) {
  const isGood = runNpm(ROOT, ['run', '--silent', script]) === 0;
  return { passed: isGood ? 1 : 0, failed: isGood ? 0 : 1, skipped: 0 };
}

/**
 * Tests count one each, from the runner's own report. A run that leaves no report, runs nothing,
 * or ends badly with no test to blame (a file that does not load, a stray error) is one failure.
 * @param {string} script
 * @returns {Count}
 */
function runTests(script) {
  const report = join(CACHE, `${script.replace(':', '-')}.json`);
  mkdirSync(CACHE, { recursive: true });
  rmSync(report, { force: true });
  const words = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const status = runNpm(ROOT, ['run', '--silent', script, '--', ...words]);
  if (!existsSync(report)) return { passed: 0, failed: 1, skipped: 0 };
  const counts = JSON.parse(readFileSync(report, 'utf8'));
  const passed = counts.numPassedTests;
  const failed = counts.numFailedTests;
  const skipped = counts.numPendingTests + counts.numTodoTests;
  const isUnexplained = failed === 0 && (status !== 0 || passed === 0);
  return { passed, failed: isUnexplained ? 1 : failed, skipped };
}

/**
 * Runs one step, or refuses it if the step it stands on has failed.
 * @param {Step} step
 * @param {Set<string>} broken names of the steps that failed
 * @returns {Count}
 */
function runStep(step, broken) {
  console.log(`\n== ${step.name} (npm run ${step.script})`);
  if (step.after !== undefined && broken.has(step.after)) {
    console.log(`Not run: ${step.after} failed.`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  return step.kind === 'check' ? runCheck(step.script) : runTests(step.script);
}

install(ROOT);
const checksOnly = process.argv.includes('--checks');
const steps = STEPS.filter(
  (step) => !checksOnly || (step.name !== 'Build' && step.kind === 'check'),
);
/** @type {Set<string>} */
const broken = new Set();
const total = { passed: 0, failed: 0, skipped: 0 };
for (const step of steps) {
  const count = runStep(step, broken);
  if (count.failed > 0) broken.add(step.name);
  total.passed += count.passed;
  total.failed += count.failed;
  total.skipped += count.skipped;
}
if (broken.size > 0) console.log(`\nFailed: ${[...broken].join(', ')}`);
const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
console.log(`\n${total.passed} passed, ${total.failed} failed${skipped}`);
process.exitCode = total.failed > 0 ? 1 : 0;
