/** The camera: orbiting by hand, quick moves to the viewpoints, framed to the free part of the window. */
import { OrbitControls } from '@react-three/drei/core/OrbitControls';
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { MOUSE, type Object3D, type PerspectiveCamera, type Scene, TOUCH, Vector3 } from 'three';
import type { OrbitControls as Controls } from 'three-stdlib';
import { documentStore, view } from '../../state/bench.ts';
import { countRender } from '../renders.ts';
import type { Surroundings } from '../surroundings.ts';
import { createDirector, type Director } from './director.ts';

const MOUSE_BUTTONS = { LEFT: MOUSE.ROTATE, MIDDLE: MOUSE.PAN, RIGHT: MOUSE.PAN };
const TOUCHES = { ONE: TOUCH.ROTATE, TWO: TOUCH.DOLLY_PAN };
const ZERO = new Vector3();

interface Props {
  readonly stage: Surroundings;
}

/** Follows requests for viewpoints, changes of the free rectangle, and the end of a drag that changed the model. */
function useRequests(director: Director, invalidate: () => void): void {
  useEffect(() => {
    const leaveView = view.subscribe((state, before) => {
      if (state.viewpointAsked !== before.viewpointAsked || state.viewpoint !== before.viewpoint)
        director.go(state.viewpoint);
      else if (state.insets !== before.insets) director.refit();
      else return;
      invalidate();
    });
    const leaveDocument = documentStore.subscribe((state, before) => {
      if (state.mark === null && before.mark !== null) invalidate();
    });
    return () => {
      leaveView();
      leaveDocument();
    };
  }, [director, invalidate]);
}

/** The layer of three's that no camera looks at. */
const HIDDEN = 31;

let isRackShown = true;

/** Parts that stand before the rod's inner end, by the names the parts give their meshes. */
function standsBefore({ name, parent }: Object3D): boolean {
  const isAround = name.startsWith('obstacle') || parent?.name.startsWith('obstacle') === true;
  return name === 'rack' || name === 'mounts' || isAround;
}

function setLayer(object: Object3D): void {
  if (standsBefore(object)) object.layers.set(isRackShown ? 0 : HIDDEN);
}

/** Shows the rack with its boot, the mounts and the surroundings, or leaves them out: along the rod they would hide it. */
function showRack(scene: Scene, isShown: boolean): void {
  if (isShown === isRackShown && isShown) return;
  isRackShown = isShown;
  scene.traverse(setLayer);
}

export function Camera({ stage }: Props) {
  countRender();
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const invalidate = useThree((state) => state.invalidate);
  const width = useThree((state) => state.size.width);
  const height = useThree((state) => state.size.height);
  const controls = useRef<Controls>(null);
  const director = useMemo(() => createDirector(camera, stage), [camera, stage]);

  useRequests(director, invalidate);
  useEffect(() => {
    director.resize(width, height);
    invalidate();
  }, [director, width, height, invalidate]);

  // Before the controls' own step, so that they start from where the camera was put.
  useFrame((state) => {
    if (controls.current !== null && director.step(controls.current)) {
      stage.moving();
      state.invalidate();
    }
  }, -2);
  // After it: the lens follows the hand.
  useFrame(({ scene }) => {
    if (controls.current === null) return;
    director.settle(controls.current);
    showRack(scene, !director.isAlongRod());
  }, -0.5);

  return (
    <OrbitControls
      ref={controls}
      enableDamping={false}
      target={ZERO}
      rotateSpeed={0.9}
      zoomSpeed={0.9}
      mouseButtons={MOUSE_BUTTONS}
      touches={TOUCHES}
      onStart={() => {
        director.leave();
        stage.holdCamera(true);
      }}
      onChange={() => {
        if (stage.isHeld()) stage.moving();
      }}
      onEnd={() => {
        stage.holdCamera(false);
        invalidate();
      }}
    />
  );
}
