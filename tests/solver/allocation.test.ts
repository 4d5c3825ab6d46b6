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

it('allocates nothing per pose: 400 000 poses with every measure and both gaps start no collection', async () => {
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
    const [, between] = out.split('MARK');
    expect(between, 'both marks').toBeDefined();
    // One collection may fall in by chance; one object a pose would bring dozens (16 MB of new space, 24 bytes each).
    const collections = between!.match(/Scavenge|Mark-Compact/g) ?? [];
    expect(collections.length).toBeLessThanOrEqual(1);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
