/**
 * The hard points as handles: dragged freely in the plane of the screen, or along one axis of the design by the arrows
 * of the selected one. What moves is the point of the design; the bench stays in its pose (see carried.ts).
 */
import type { DocumentStore } from '../../state/document.ts';
import type { MeshStore } from '../../state/meshes.ts';
import { hardPoints } from '../../state/points.ts';
import type { PosedStore } from '../../state/posed.ts';
import type { View } from '../../state/view.ts';
import { type Carried, carry, directionNow, placeNow } from './carried.ts';
import type { Grip } from './grip.ts';
import { type Axis, createPointDrag, UNITS } from './pointDrag.ts';
import type { Pointer } from './pointer.ts';
import { snapStep } from './snap.ts';

/** Length of the arrows of the selected handle, px, and where their shaft starts to answer the hand. */
export const ARROW = 64;
const ARROW_START = 16;

const AXES: readonly Axis[] = [0, 1, 2];

export interface PointGrip extends Grip {
  /** Every handle of the present model, ready to be placed. */
  carried(): readonly Carried[];
  /** Place in `carried()`, or −1. */
  readonly hovered: number;
  readonly selected: number;
  /** The axis under the pointer or in its hold; null for the handle itself. */
  readonly axis: Axis | null;
  readonly isHeld: boolean;
  /** Why the last step of the drag was refused, or null. */
  refusal(): string | null;
  /** Writes the unit direction of an axis of the design as the selected point's body carries it now. */
  axisNow(carried: Carried, axis: Axis, out: Float64Array): void;
}

interface Bench {
  readonly posed: PosedStore;
  readonly documentStore: DocumentStore;
  readonly view: View;
  readonly meshes: MeshStore;
}

/** Distance of the point (x, y) from the stretch of a line, px. */
function fromStretch(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? ((x - ax) * dx + (y - ay) * dy) / squared : 0;
  const inside = Math.min(1, Math.max(0, t));
  return Math.hypot(x - ax - inside * dx, y - ay - inside * dy);
}

const _place = new Float64Array(3);
const _tip = new Float64Array(3);
const _axis = new Float64Array(3);

export function createPointGrip({ posed, documentStore, view, meshes }: Bench): PointGrip {
  const drag = createPointDrag();
  let of = posed.current().corner;
  /** Meshes that become ready are held at their middles. */
  let files = meshes.getState();
  const carryAll = () => hardPoints(of.model).map((point) => carry(of, point, files));
  let list: readonly Carried[] = carryAll();
  let hovered = -1;
  let selected = -1;
  let axis: Axis | null = null;
  let isHeld = false;
  let held: Carried | null = null;

  function carried(): readonly Carried[] {
    const { corner } = posed.current();
    if (corner === of && files === meshes.getState()) return list;
    files = meshes.getState();
    const isSame = corner.model.name === of.model.name;
    of = corner;
    const before = list.length;
    list = carryAll();
    if (!isSame || list.length !== before) {
      selected = -1;
      hovered = -1;
    }
    return list;
  }

  function axisNow(at: Carried, which: Axis, out: Float64Array): void {
    directionNow(at, posed.current().pose, UNITS[which]!, out);
  }

  /** The arrow of the selected handle under the pointer. */
  function arrowUnder(pointer: Pointer): Axis | null {
    const at = list[selected];
    if (at === undefined) return null;
    placeNow(at, posed.current().pose, _place);
    if (!pointer.project(_place, 0)) return null;
    const { x, y } = pointer.screen;
    const length = ARROW * pointer.lengthPerPixel(_place, 0);
    for (const which of AXES) {
      axisNow(at, which, _axis);
      for (let i = 0; i < 3; i += 1) _tip[i] = _place[i]! + length * _axis[i]!;
      if (!pointer.project(_tip, 0)) continue;
      const { x: tipX, y: tipY } = pointer.screen;
      const seen = Math.hypot(tipX - x, tipY - y);
      if (seen < 2 * ARROW_START) continue;
      const t = ARROW_START / seen;
      const startX = x + t * (tipX - x);
      const startY = y + t * (tipY - y);
      const miss = fromStretch(pointer.x, pointer.y, startX, startY, tipX, tipY);
      if (miss <= pointer.reach * 0.8) return which;
    }
    return null;
  }

  /** The handle nearest to the pointer, within its reach. */
  function handleUnder(pointer: Pointer): number {
    const { pose } = posed.current();
    let nearest = pointer.reach;
    let found = -1;
    for (let i = 0; i < list.length; i += 1) {
      placeNow(list[i]!, pose, _place);
      if (!pointer.project(_place, 0)) continue;
      const distance = Math.hypot(pointer.screen.x - pointer.x, pointer.screen.y - pointer.y);
      if (distance > nearest) continue;
      nearest = distance;
      found = i;
    }
    return found;
  }

  return {
    name: 'point',
    carried,
    axisNow,
    get hovered() {
      return hovered;
    },
    get selected() {
      return selected;
    },
    get axis() {
      return axis;
    },
    get isHeld() {
      return isHeld;
    },
    refusal: () => (isHeld ? documentStore.getState().refusal : null),
    over(pointer) {
      if (!view.getState().layers.handles) return false;
      carried();
      axis = arrowUnder(pointer);
      hovered = axis === null ? handleUnder(pointer) : selected;
      return hovered >= 0;
    },
    leave() {
      hovered = -1;
      axis = null;
    },
    take(pointer) {
      selected = hovered;
      held = list[selected] ?? null;
      if (held === null) return;
      isHeld = true;
      view.setState({ touched: held.point.path });
      documentStore.beginGesture();
      drag.begin(pointer, held, axis, posed.current().pose);
    },
    move(pointer) {
      if (held === null) return;
      const step = snapStep(view.getState().unit, pointer.isFine);
      const wanted = drag.wanted(pointer, step);
      if (wanted === null) return;
      const { point } = held;
      documentStore.edit((model) => point.set(model, wanted));
    },
    drop() {
      isHeld = false;
      held = null;
      documentStore.endGesture();
    },
    cancel() {
      isHeld = false;
      held = null;
      documentStore.cancelGesture();
    },
  };
}
