/** The memory of a map. */
import type { LockMap } from '../../solver/map.ts';

/** The buffers of a map, to be handed over without copying. */
export function buffersOf(map: LockMap): Transferable[] {
  return Object.values(map).map((array: Float64Array | Uint8Array) => array.buffer as ArrayBuffer);
}
