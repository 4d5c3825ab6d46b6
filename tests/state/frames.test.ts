import { expect, it, vi } from 'vitest';
import { createFrames } from '../../src/state/frames.ts';

/** A clock whose frames come when the test says so. */
function manual() {
  const waiting: (() => void)[] = [];
  const frames = createFrames((run) => waiting.push(run));
  const pass = (): number => {
    const due = waiting.splice(0);
    for (const run of due) run();
    return due.length;
  };
  return { ...frames, pass };
}

it('runs each callback once a frame, however often one was asked for, and none at rest', () => {
  const { onFrame, requestFrame, pass } = manual();
  const first = vi.fn();
  const second = vi.fn();
  onFrame(first);
  onFrame(second);
  expect(pass()).toBe(1);
  for (let i = 0; i < 5; i += 1) requestFrame();
  expect(pass()).toBe(1);
  expect([first, second].map((spy) => spy.mock.calls.length)).toEqual([2, 2]);
  expect(pass()).toBe(0);
});

it('asks for the next frame when a callback asks inside a frame', () => {
  const { onFrame, requestFrame, pass } = manual();
  let left = 2;
  onFrame(() => {
    left -= 1;
    if (left > 0) requestFrame();
  });
  expect([pass(), pass(), pass()]).toEqual([1, 1, 0]);
});

it('lets a callback leave, alone, even while the frame runs', () => {
  const { onFrame, requestFrame, pass } = manual();
  const stays = vi.fn();
  const leaves = vi.fn(() => away());
  const away = onFrame(leaves);
  onFrame(stays);
  pass();
  requestFrame();
  pass();
  expect(leaves).toHaveBeenCalledTimes(1);
  expect(stays).toHaveBeenCalledTimes(2);
});

it('asks for no frame while nobody listens', () => {
  const { requestFrame, pass } = manual();
  requestFrame();
  expect(pass()).toBe(0);
});

it('reports what a callback throws and still runs the others', () => {
  const { onFrame, pass } = manual();
  const reported = vi.fn();
  vi.stubGlobal('reportError', reported);
  const other = vi.fn();
  onFrame(() => {
    throw new Error('broken');
  });
  onFrame(other);
  pass();
  expect(reported.mock.calls[0]?.[0]).toEqual(new Error('broken'));
  expect(other).toHaveBeenCalledTimes(1);
  vi.unstubAllGlobals();
});
