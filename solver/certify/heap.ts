/** A heap that gives the lowest first. */

export interface Ranked {
  readonly bound: number;
}

export function push<T extends Ranked>(heap: T[], item: T): void {
  let at = heap.length;
  heap.push(item);
  while (at > 0) {
    const above = (at - 1) >> 1;
    if (heap[above]!.bound <= item.bound) break;
    heap[at] = heap[above]!;
    at = above;
  }
  heap[at] = item;
}

export function pop<T extends Ranked>(heap: T[]): T | undefined {
  const first = heap[0];
  const last = heap.pop();
  if (first === undefined || last === undefined || heap.length === 0) return first;
  let at = 0;
  for (;;) {
    let below = 2 * at + 1;
    if (below >= heap.length) break;
    if (below + 1 < heap.length && heap[below + 1]!.bound < heap[below]!.bound) below += 1;
    if (heap[below]!.bound >= last.bound) break;
    heap[at] = heap[below]!;
    at = below;
  }
  heap[at] = last;
  return first;
}
