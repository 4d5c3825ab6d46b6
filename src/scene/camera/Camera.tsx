/** The camera: orbiting by hand, quick moves to the viewpoints, framed to the free part of the window. */
import { useFrame, useThree } from '@react-three/fiber';
import { lazy, Suspense, useEffect, useMemo, useRef } from 'react';
import { type Object3D, type PerspectiveCamera, type Scene, Vector3 } from 'three';
import type { OrbitControls as Controls } from 'three-stdlib';
import { documentStore, view } from '../../state/bench.ts';
import { afterFirstPicture } from '../../state/firstPicture.ts';
import { countRender } from '../renders.ts';
import type { Surroundings } from '../surroundings.ts';
import { createDirector, type Director } from './director.ts';

// The hand's way around the corner is loaded behind the first picture.
const Orbit = lazy(() =>
  afterFirstPicture(() => import('./Orbit.tsx')).then((late) => ({ default: late.Orbit })),
);

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
  /** What the director aims until the controls are there; they begin with its target. */
  const still = useMemo(() => ({ target: new Vector3(), minDistance: 0, maxDistance: 1 }), []);
  const director = useMemo(() => createDirector(camera, stage), [camera, stage]);

  useRequests(director, invalidate);
  useEffect(() => {
    director.resize(width, height);
    invalidate();
  }, [director, width, height, invalidate]);

  // Before the controls' own step, so that they start from where the camera was put.
  useFrame((state) => {
    if (director.step(controls.current ?? still)) {
      stage.moving();
      state.invalidate();
    }
  }, -2);
  // After it: the lens follows the hand.
  useFrame(({ scene }) => {
    director.settle(controls.current ?? still);
    showRack(scene, !director.isAlongRod());
  }, -0.5);

  return (
    <Suspense fallback={null}>
      <Orbit
        controls={controls}
        target={still.target}
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
    </Suspense>
  );
}
