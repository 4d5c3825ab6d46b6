// The space the tyre sweeps: worked out, said, saved and read back; and the cones of the joints.
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  Measure,
  measureInto,
  Slot,
  solve,
} from '../../solver/index.ts';
import { boxOf } from '../../src/mesh/data.ts';
import { readMesh } from '../../src/mesh/read/read.ts';
import { angle } from '../../src/words/format.ts';
import { type Bench, firstPicture, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 90_000 };
vi.setConfig({ testTimeout: 240_000 });

const MODEL = shipped('half-ton-factory');

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

/** Bytes of the file that the page saves. */
async function saved(page: Page, kind: string): Promise<{ name: string; bytes: Uint8Array }> {
  await page.getByLabel('File', { exact: true }).selectOption(kind);
  await page.getByLabel('Grid', { exact: true }).selectOption('10');
  const download = page.waitForEvent('download', PATIENCE);
  await page.getByRole('button', { name: 'Save the swept space' }).click();
  const file = await download;
  return { name: file.suggestedFilename(), bytes: new Uint8Array(readFileSync(await file.path())) };
}

/** Corners of a binary STL, read by its definition. */
function stlBox(bytes: Uint8Array): { min: number[]; max: number[]; count: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const count = view.getUint32(80, true);
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < count; i += 1) {
    for (let k = 0; k < 9; k += 1) {
      const value = view.getFloat32(84 + 50 * i + 12 + 4 * k, true);
      min[k % 3] = Math.min(min[k % 3]!, value);
      max[k % 3] = Math.max(max[k % 3]!, value);
    }
  }
  return { min, max, count };
}

/** Highest and lowest point of the tyre's tread over the model's travel at rack 0, mm: half the size's 31.6 in. */
function heights(): { low: number; high: number } {
  const corner = assemble(MODEL);
  const pose = createPose();
  const radius = (17 * 25.4) / 2 + 265 * 0.7;
  solve(corner, pose, MODEL.travel.bump, 0);
  const high = pose.data[Slot.centre + 2]! + radius;
  solve(corner, pose, -MODEL.travel.droop, 0);
  return { low: pose.data[Slot.centre + 2]! - radius, high };
}

describe('the space the tyre sweeps', () => {
  it('is worked out, says what it comes near to, and is saved as STL and GLB that read back alike', async () => {
    bench = await openBench({ before: withoutPicture });
    const { page } = bench;
    await page.getByRole('button', { name: 'Sweep', exact: true }).click();
    await page.getByText(/^Swept: the tyre/).waitFor(PATIENCE);
    await page.getByRole('row', { name: /frame rail/ }).waitFor();

    const stl = await saved(page, 'stl');
    expect(stl.name).toMatch(/-tyre-swept\.stl$/);
    const box = stlBox(stl.bytes);
    expect(box.count).toBeGreaterThan(1000);
    expect(stl.bytes.length).toBe(84 + 50 * box.count);
    const { low, high } = heights();
    expect(box.max[2]).toBeGreaterThan(high - 2);
    expect(box.max[2]).toBeLessThan(high + 12);
    expect(box.min[2]).toBeLessThan(low + 2);
    expect(box.min[2]).toBeGreaterThan(low - 12);

    const glb = await saved(page, 'glb');
    const read = readMesh(glb.name, glb.bytes);
    if (!read.ok) throw new Error(read.found);
    const turned = boxOf(read.mesh.positions);
    expect(read.mesh.index.length / 3).toBe(box.count);
    // The reader brings glTF's axes back to the vehicle's; its unit is the metre.
    for (const k of [0, 1, 2] as const) {
      expect(1000 * turned.min[k]).toBeCloseTo(box.min[k]!, 1);
      expect(1000 * turned.max[k]).toBeCloseTo(box.max[k]!, 1);
    }
  });
});

describe('the cones of the joints', () => {
  it('say what is left of each limit, as the solver has it', async () => {
    bench = await openBench({ context: { deviceScaleFactor: 0.5 } });
    const { page } = bench;
    await firstPicture(page);
    await page.getByRole('button', { name: 'Drawings in the scene' }).click();
    await page.getByRole('checkbox', { name: /Cones of the joints/ }).check();
    const corner = assemble(MODEL);
    const pose = createPose();
    const measures = createMeasures();
    solve(corner, pose, 0, 0);
    measureInto(corner, pose, measures);
    const left = MODEL.lowerArm.ballJointLimit! - measures[Measure.lowerBallJoint]!;
    await page
      .locator('.stage-label', { hasText: `lower ball joint ${angle(left, 1)} left` })
      .waitFor(PATIENCE);
  });
});
