/**
 * The wheel as a handle. Up and down the hand's ray is laid on the upright line through the grabbed point: its way is
 * the travel. Sideways the grabbed point is kept under the hand by the rack.
 */
import { type Corner, Slot } from '../../../solver/index.ts';
import { rackRange } from '../../../solver/model/defaults.ts';
import { type Inputs, travelRange } from '../../state/inputs.ts';
import type { PosedStore } from '../../state/posed.ts';
import type { Drum } from '../camera/extent.ts';
import type { Grip } from './grip.ts';
import { type Way, wayOf } from './lock.ts';
import type { Pointer } from './pointer.ts';
import { alongLine, LEAST_SINE, meetsDrum, onPlane, type Triple } from './rays.ts';
import { createSteerGrip, gripWheel, steerTo } from './steer.ts';

export interface WheelGrip extends Grip {
  readonly isOver: boolean;
  readonly isHeld: boolean;
  readonly way: Way;
}

interface Bench {
  readonly posed: PosedStore;
  readonly inputs: Inputs;
  /** Size of the present tyre. */
  readonly drum: () => Drum;
}

const UP = Float64Array.of(0, 0, 1);

/** Direction of a vector on the screen, px right and down, unit; null where it runs along the view. */
function onScreen(pointer: Pointer, v: Triple): readonly [number, number] | null {
  const { right, up } = pointer;
  const x = v[0]! * right[0]! + v[1]! * right[1]! + v[2]! * right[2]!;
  const y = v[0]! * up[0]! + v[1]! * up[1]! + v[2]! * up[2]!;
  const size = Math.hypot(x, y);
  return size < LEAST_SINE ? null : [x / size, -y / size];
}

export function createWheelGrip({ posed, inputs, drum }: Bench): WheelGrip {
  const point = new Float64Array(3);
  const hand = new Float64Array(3);
  const centre = new Float64Array(3);
  const axis = new Float64Array(3);
  const away = new Float64Array(3);
  const steering = createSteerGrip();
  let isOver = false;
  let isHeld = false;
  let way: Way = 'undecided';
  let startX = 0;
  let startY = 0;
  let startTravel = 0;
  let startRack = 0;
  let up: readonly [number, number] | null = null;
  let side: readonly [number, number] | null = null;

  function hits(pointer: Pointer): boolean {
    const { data } = posed.current().pose;
    const { half, radius } = drum();
    for (let i = 0; i < 3; i += 1) {
      centre[i] = data[Slot.centre + i]!;
      axis[i] = data[Slot.hubAxis + i]!;
    }
    return meetsDrum(pointer.ray, centre, axis, half, radius, point);
  }

  /** How far the hand has moved sideways at the grabbed point's depth, mm. */
  function sideways(pointer: Pointer): number {
    if (!onPlane(pointer.ray, point, away, hand)) return 0;
    let sum = 0;
    for (let i = 0; i < 3; i += 1) sum += (hand[i]! - point[i]!) * steering.aside[i]!;
    return sum;
  }

  function travelFor(pointer: Pointer, corner: Corner): number {
    const [least, most] = travelRange(corner.model);
    return Math.min(most, Math.max(least, startTravel + alongLine(pointer.ray, point, UP)));
  }

  return {
    name: 'wheel',
    get isOver() {
      return isOver;
    },
    get isHeld() {
      return isHeld;
    },
    get way() {
      return way;
    },
    over(pointer) {
      isOver = hits(pointer);
      return isOver;
    },
    leave() {
      isOver = false;
    },
    take(pointer) {
      const { corner, pose } = posed.current();
      const [least, most] = rackRange(corner.model.steering);
      isHeld = true;
      way = 'undecided';
      startX = pointer.x;
      startY = pointer.y;
      ({ travel: startTravel, rack: startRack } = inputs.getState());
      away.set(pointer.away);
      gripWheel(steering, corner, pose, point, pointer.ray, pointer.right, drum().radius);
      up = onScreen(pointer, UP);
      side = most > least ? onScreen(pointer, steering.aside) : null;
    },
    move(pointer) {
      if (way === 'undecided')
        way = wayOf(pointer.x - startX, pointer.y - startY, up, side, pointer.isFree);
      if (way === 'undecided') return;
      const { corner } = posed.current();
      const travel = way === 'steer' ? startTravel : travelFor(pointer, corner);
      const [least, most] = rackRange(corner.model.steering);
      const rack =
        way === 'travel'
          ? startRack
          : steerTo(steering, corner, travel, pointer.ray, sideways(pointer), least, most);
      inputs.move(travel, rack);
    },
    drop() {
      isHeld = false;
      way = 'undecided';
    },
    cancel() {
      isHeld = false;
      way = 'undecided';
      inputs.move(startTravel, startRack);
    },
  };
}
