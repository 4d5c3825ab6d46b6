/** Puts the camera where a viewpoint wants it, over a quarter of a second, and leaves it to the hand afterwards. */
import { type PerspectiveCamera, Vector3 } from 'three';
import type { OrbitControls as Controls } from 'three-stdlib';
import { posed, view } from '../../state/bench.ts';
import type { Viewpoint } from '../../state/view.ts';
import { toThree } from '../axes.ts';
import type { Surroundings } from '../surroundings.ts';
import { createShot, framePoints, freeCentre, OUTLOOKS, type Shot } from './framing.ts';
import { copyShot, MOVE_TIME, mixShots } from './moves.ts';
import { frameRod } from './rodShot.ts';

/** How near and how far the hand may take the camera, as multiples of the framed distance. */
const NEAREST = 0.08;
const FARTHEST = 4;
/** Depth drawn before and behind the target, mm. */
const DEPTH_BEFORE = 2500;
const DEPTH_BEHIND = 6000;

export interface Director {
  /** Starts a move to a viewpoint. */
  go(viewpoint: Viewpoint): void;
  /** The free rectangle changed: at a viewpoint the corner is framed anew at once. */
  refit(): void;
  resize(width: number, height: number): void;
  /** Called before each frame; true while a move goes on. */
  step(controls: Controls): boolean;
  /** True where the view is along the rod, or on its way there: then what hides the rod's inner end is left out. */
  isAlongRod(): boolean;
  /** Called after the controls have had their way. */
  settle(controls: Controls): void;
  /** The hand has taken the camera: nothing follows until a viewpoint is asked for. */
  readonly leave: () => void;
}

const _direction = new Vector3();

function prefersCalm(): boolean {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}

export function createDirector(camera: PerspectiveCamera, stage: Surroundings): Director {
  const from = createShot();
  const now = createShot();
  const wanted = createShot();
  let width = 1;
  let height = 1;
  let isPlaced = false;
  /** True until the hand takes the camera away from the viewpoint. */
  let isHome = true;
  let started = Number.NaN;
  let isFresh = true;

  function aim(shot: Shot): void {
    const { viewpoint, insets } = view.getState();
    if (viewpoint === 'alongRod') {
      const { radius } = stage.extent().drum;
      frameRod(shot, posed.current().pose.data, radius, width, height, insets);
    } else {
      framePoints(shot, stage.extent().points, OUTLOOKS[viewpoint], width, height, insets);
    }
  }

  /** Writes a shot to the camera and the controls. */
  function apply(shot: Shot, controls: Controls): void {
    toThree(shot.target[0], shot.target[1], shot.target[2], controls.target);
    toThree(shot.direction[0], shot.direction[1], shot.direction[2], _direction);
    camera.position.copy(controls.target).addScaledVector(_direction, shot.distance);
    camera.fov = shot.fov;
    camera.lookAt(controls.target);
    controls.minDistance = shot.distance * NEAREST;
    controls.maxDistance = shot.distance * FARTHEST;
  }

  function offset(): void {
    const [x, y] = freeCentre(view.getState().insets);
    camera.setViewOffset(width, height, -x, -y, width, height);
  }

  /** Where the hand has left the camera, as a shot to move on from. */
  function read(controls: Controls, shot: Shot): void {
    const { target } = controls;
    _direction.copy(camera.position).sub(target);
    shot.distance = _direction.length();
    _direction.divideScalar(shot.distance);
    shot.target[0] = target.x;
    shot.target[1] = -target.z;
    shot.target[2] = target.y;
    shot.direction[0] = _direction.x;
    shot.direction[1] = -_direction.z;
    shot.direction[2] = _direction.y;
    shot.fov = camera.fov;
  }

  function move(controls: Controls): boolean {
    const time = performance.now();
    if (Number.isNaN(started)) {
      started = time;
      read(controls, from);
    }
    const t = prefersCalm() ? 1 : Math.min(1, (time - started) / MOVE_TIME);
    aim(wanted);
    mixShots(from, wanted, t, now);
    apply(now, controls);
    if (t >= 1) isFresh = false;
    return t < 1;
  }

  function step(controls: Controls): boolean {
    if (!isHome) return false;
    if (!isPlaced) {
      isPlaced = true;
      isFresh = false;
      aim(wanted);
      copyShot(wanted, now);
      apply(now, controls);
      return false;
    }
    if (isFresh) return move(controls);
    if (view.getState().viewpoint === 'alongRod') {
      aim(now);
      apply(now, controls);
    }
    return false;
  }

  function settle(controls: Controls): void {
    const distance = camera.position.distanceTo(controls.target);
    camera.near = Math.max(distance * 0.02, distance - DEPTH_BEFORE);
    camera.far = distance + DEPTH_BEHIND;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
  }

  return {
    go() {
      isHome = true;
      isFresh = true;
      started = Number.NaN;
    },
    refit() {
      offset();
      if (isHome) isPlaced = false;
    },
    resize(w, h) {
      width = Math.max(1, w);
      height = Math.max(1, h);
      offset();
      if (isHome) isPlaced = false;
    },
    step,
    settle,
    isAlongRod: () => isHome && view.getState().viewpoint === 'alongRod',
    leave() {
      isHome = false;
      isFresh = false;
    },
  };
}
