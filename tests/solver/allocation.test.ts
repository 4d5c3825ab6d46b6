import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Code is optimised where it stands, not on a thread that a busy machine holds up: the same collections every time. */
const STEADY = ['--no-concurrent-recompilation'];

/** Collections between each two marks of the program, which are one per stretch of its work. */
async function collections(): Promise<readonly number[]> {
  const folder = mkdtempSync(join(tmpdir(), 'armscribe-allocation-'));
  try {
    const file = join(folder, 'allocation.mjs');
    const bundle = await rolldown({
      input: join(ROOT, 'tests/support/allocation.ts'),
      platform: 'node',
    });
    await bundle.write({ file, format: 'esm' });
    const out = execFileSync(process.execPath, [...STEADY, '--trace-gc', file], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    const stretches = out.split('MARK');
    return stretches.map((stretch) => stretch.match(/Scavenge|Mark-Compact/g)?.length ?? 0);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

it('allocates nothing per pose: no collection starts in 400 000 poses with every measure and both gaps, nor in 12 000 with every pair', async () => {
  const counts = await collections();
  expect(counts, 'before, between and behind four marks').toHaveLength(5);
  // One collection may fall in by chance; one object a pose would bring dozens (16 MB of new space, 24 bytes each).
  expect(counts[1]).toBeLessThanOrEqual(1);
  expect(counts[3]).toBeLessThanOrEqual(1);
});
