/** A second, near look at the tight spot of the pair on the map, or at the cam in hand, in a frame of its own that follows it. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { type Camera, PerspectiveCamera, type WebGLRenderer } from 'three';
import { posed, view } from '../../state/bench.ts';
import { chosenGap } from '../../state/chosenGap.ts';
import { type CamLook, closeUp, lookAtCam, showCloseUp } from '../../state/closeUp.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length } from '../../words/format.ts';
import { pairWords } from '../../words/parts.ts';
import type { Surroundings } from '../surroundings.ts';
import { aimAtCam, aimAtSpot } from './aim.ts';
import { createCloseUpFrame } from './frame.ts';

/** Draws the scene once more into part of the canvas, CSS pixels from its lower left corner. */
function drawInto(
  gl: WebGLRenderer,
  x: number,
  y: number,
  width: number,
  height: number,
  draw: () => void,
): void {
  const { autoUpdate } = gl.shadowMap;
  gl.shadowMap.autoUpdate = false;
  gl.setViewport(x, y, width, height);
  gl.setScissor(x, y, width, height);
  gl.setScissorTest(true);
  draw();
  gl.setScissorTest(false);
  gl.shadowMap.autoUpdate = autoUpdate;
}

/** "Tie rod to wheel: 40.4 mm"; the last words are kept while they still hold. */
function createGapWords(): (
  pair: readonly [string, string],
  gap: number,
  unit: LengthUnit,
) => string {
  let said = '';
  let of: readonly [string, string] | null = null;
  let steps = Number.NaN;
  let inUnit: LengthUnit | null = null;
  return (pair, gap, unit) => {
    const now = Math.round(gap * 100);
    if (pair === of && now === steps && unit === inUnit) return said;
    of = pair;
    steps = now;
    inUnit = unit;
    const size = length(Math.abs(gap), gapUnit(unit));
    said = `${pairWords(pair)}: ${size}${gap <= 0 ? ' deep' : ''}`;
    return said;
  };
}

const OTHER = {
  lowerFront: 'lowerRear',
  lowerRear: 'lowerFront',
  upperFront: 'upperRear',
  upperRear: 'upperFront',
} as const;

function aimAtPivot(camera: PerspectiveCamera, eye: Camera, { pivot }: CamLook): void {
  const { pivots } = posed.current().corner.linkage;
  aimAtCam(camera, eye, pivots[pivot], pivots[OTHER[pivot]]);
}

/** Puts away what is shown: the cam first, then the tight spot. */
function putAway(): void {
  if (closeUp.getState().cam === null) showCloseUp(false);
  else lookAtCam(null);
}

export function CloseUp({ stage }: { readonly stage: Surroundings }) {
  const invalidate = useThree((state) => state.invalidate);
  const camera = useMemo(() => new PerspectiveCamera(24, 1, 1, 10_000), []);
  const gapWords = useMemo(createGapWords, []);
  const frame = useMemo(() => createCloseUpFrame(stage.element, putAway), [stage]);
  useEffect(() => {
    frame.show();
    invalidate();
    const leave = closeUp.subscribe(() => invalidate());
    return () => {
      leave();
      frame.leave();
      invalidate();
    };
  }, [frame, invalidate]);

  // A priority above 0 takes the drawing over: the whole picture first, then the close-up in its frame.
  useFrame(({ gl, scene, camera: eye, size }) => {
    gl.setViewport(0, 0, size.width, size.height);
    gl.render(scene, eye);
    frame.place(view.getState().insets, size.height);
    camera.aspect = frame.width / frame.height;
    const { cam } = closeUp.getState();
    if (cam === null) {
      const field = chosenGap();
      const pair = field?.pairs[field.which];
      const isSeen = field !== null && pair !== undefined && Number.isFinite(field.gap);
      if (!isSeen) {
        frame.say('No such pair in this pose');
        return;
      }
      const { unit } = view.getState();
      frame.say(gapWords(pair, field.gap, unit));
      aimAtSpot(camera, eye, field.pointA, field.pointB);
    } else {
      frame.say(cam.name);
      aimAtPivot(camera, eye, cam);
    }
    drawInto(
      gl,
      frame.left,
      size.height - frame.top - frame.height,
      frame.width,
      frame.height,
      () => gl.render(scene, camera),
    );
  }, 1);
  return null;
}
