/** Puts the camera where a viewpoint wants it, over a quarter of a second, and leaves it to the hand afterwards. */
import { type PerspectiveCamera, Vector3 } from 'three';
import { documentStore, posed, view } from '../../state/bench.ts';
import type { Viewpoint } from '../../state/view.ts';
import { toThree } from '../axes.ts';
import type { Surroundings } from '../surroundings.ts';
import { boxChange, type Extent } from './extent.ts';
import { createShot, fitPoints, framePoints, freeCentre, OUTLOOKS, type Shot } from './framing.ts';
import { copyShot, MOVE_TIME, mixShots } from './moves.ts';
import { frameRod } from './rodShot.ts';
import { type Controls, differenceOf, readShot } from './stand.ts';

/** How near and how far the hand may take the camera, as multiples of the framed distance. */
const NEAREST = 0.08;
const FARTHEST = 4;
/** Depth drawn before and behind the target, mm. */
const DEPTH_BEFORE = 2500;
const DEPTH_BEHIND = 6000;

/** A change of the framing smaller than this part of what is seen moves no camera. */
const NOTICED = 0.012;
/** A change this large is framed anew even where the hand has chosen the view. */
const LARGE = 0.2;

export interface Director {
  /** Starts a move to a viewpoint. */
  go(viewpoint: Viewpoint): void;
  /** The free rectangle changed: what stood in the old one glides into the new one. */
  refit(): void;
  resize(width: number, height: number): void;
  /** Called before each frame; true while a move goes on. */
  step(controls: Controls): boolean;
  /** True where the view is along the rod, or on its way there: then what hides the rod's inner end is left out. */
  isAlongRod(): boolean;
  /** Called after the controls have had their way. */
  settle(controls: Controls): void;
  /** The hand has taken the camera: only the free rectangle and another model move it until a viewpoint is asked for. */
  readonly leave: () => void;
}

const _direction = new Vector3();

function prefersCalm(): boolean {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}

/** What the camera is wanted for: the viewpoint's shot, or one of the hand's direction. */
type Wish = 'viewpoint' | 'hand';

export function createDirector(camera: PerspectiveCamera, stage: Surroundings): Director {
  const from = createShot();
  const now = createShot();
  const wanted = createShot();
  const fitted = createShot();
  const offset = { x: 0, y: 0, fromX: 0, fromY: 0 };
  let width = 1;
  let height = 1;
  let insets = view.getState().insets;
  let framed: Extent | null = null;
  let framedOrigin: string | null = null;
  let hasNewRoom = false;
  let isPlaced = false;
  /** True until the hand takes the camera away from the viewpoint. */
  let isHome = true;
  /** What the move that goes on leads to, or null at rest; and when it began: NaN for in the next frame. */
  let wish: Wish | null = null;
  let started = Number.NaN;

  function aim(shot: Shot): void {
    const { viewpoint } = view.getState();
    const extent = stage.extent();
    if (viewpoint === 'alongRod') {
      frameRod(shot, posed.current().pose.data, extent.drum, width, height, insets);
    } else {
      framePoints(shot, extent.points, OUTLOOKS[viewpoint], width, height, insets);
    }
  }

  /** Fills `shot` with the place from which the whole corner is seen free in the direction and by the lens of `like`. */
  function fitAll(shot: Shot, like: Shot): void {
    copyShot(like, shot);
    fitPoints(shot, stage.extent().points, width, height, insets);
  }

  /** Writes a shot to the camera and the controls. */
  function apply(shot: Shot, controls: Controls): void {
    toThree(shot.target[0], shot.target[1], shot.target[2], controls.target);
    toThree(shot.direction[0], shot.direction[1], shot.direction[2], _direction);
    camera.position.copy(controls.target).addScaledVector(_direction, shot.distance);
    camera.fov = shot.fov;
    camera.lookAt(controls.target);
  }

  function setOffset(t: number): void {
    const [x, y] = freeCentre(insets);
    const eased = t * t * (3 - 2 * t);
    offset.x = offset.fromX + (x - offset.fromX) * eased;
    offset.y = offset.fromY + (y - offset.fromY) * eased;
    camera.setViewOffset(width, height, -offset.x, -offset.y, width, height);
  }

  function limit(controls: Controls, distance: number): void {
    controls.minDistance = distance * NEAREST;
    controls.maxDistance = distance * FARTHEST;
  }

  function start(next: Wish): void {
    wish = next;
    started = Number.NaN;
  }

  /** Puts everything where it belongs, without a move. */
  function place(controls: Controls): void {
    isPlaced = true;
    hasNewRoom = false;
    wish = null;
    insets = view.getState().insets;
    framed = stage.extent();
    framedOrigin = documentStore.getState().origin;
    setOffset(1);
    if (!isHome) return;
    aim(now);
    apply(now, controls);
    limit(controls, now.distance);
  }

  function begin(controls: Controls, time: number): void {
    started = time;
    readShot(camera, controls, from);
    offset.fromX = offset.x;
    offset.fromY = offset.y;
  }

  function move(controls: Controls): boolean {
    const time = performance.now();
    if (Number.isNaN(started)) begin(controls, time);
    const t = prefersCalm() ? 1 : Math.min(1, (time - started) / MOVE_TIME);
    if (wish === 'viewpoint') aim(wanted);
    mixShots(from, wanted, t, now);
    apply(now, controls);
    setOffset(t);
    limit(controls, wish === 'viewpoint' ? now.distance : fitted.distance);
    if (t >= 1) wish = null;
    return t < 1;
  }

  /** How far the camera would have to go for the model as it is now, as a part of what is seen; `wanted` is where. */
  function change(controls: Controls): number {
    readShot(camera, controls, from);
    if (isHome) aim(wanted);
    else fitAll(wanted, from);
    copyShot(wanted, fitted);
    return differenceOf(from, wanted);
  }

  /** Frames another model, or a changed one once no hand is at it; where the hand looks only what changed much. */
  function follow(controls: Controls): void {
    const extent = stage.extent();
    const { mark, origin } = documentStore.getState();
    if (extent === framed || mark !== null) return;
    const isMuch = origin !== framedOrigin || framed === null || boxChange(framed, extent) > LARGE;
    if (isHome || isMuch) {
      if (change(controls) > NOTICED) start(isHome ? 'viewpoint' : 'hand');
    }
    framed = extent;
    framedOrigin = origin;
  }

  /** The free rectangle changed: in the hand's direction, as large a part of it is filled as before, about the same place. */
  function refit(controls: Controls): void {
    hasNewRoom = false;
    if (!isHome) {
      if (wish === null) readShot(camera, controls, wanted);
      fitAll(fitted, wanted);
      const before = fitted.distance;
      insets = view.getState().insets;
      fitAll(fitted, wanted);
      wanted.distance *= fitted.distance / before;
    }
    insets = view.getState().insets;
    start(isHome ? 'viewpoint' : 'hand');
  }

  function step(controls: Controls): boolean {
    if (!isPlaced) place(controls);
    else if (hasNewRoom) refit(controls);
    else if (wish === null) follow(controls);
    if (wish !== null) return move(controls);
    if (isHome && view.getState().viewpoint === 'alongRod') {
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
      start('viewpoint');
    },
    refit() {
      hasNewRoom = true;
    },
    resize(w, h) {
      width = Math.max(1, w);
      height = Math.max(1, h);
      isPlaced = false;
    },
    step,
    settle,
    isAlongRod: () => isHome && view.getState().viewpoint === 'alongRod',
    leave() {
      isHome = false;
      if (wish === null) return;
      wish = null;
      setOffset(1);
    },
  };
}
