/** Something a pointer can take hold of. A drag is measured from the value at `take`; `cancel` puts that value back. */
import type { Pointer } from './pointer.ts';

export interface Grip {
  /** Written on the stage as data-grip while the pointer is over it or holds it. */
  readonly name: 'wheel' | 'point';
  /** True when the pointer is over it; notes what is under it. */
  over(pointer: Pointer): boolean;
  /** The pointer has left it, or another grip is under it now. */
  leave(): void;
  /** Takes hold of what `over` found. */
  take(pointer: Pointer): void;
  move(pointer: Pointer): void;
  drop(): void;
  cancel(): void;
}
