/** The hand on the picture: the wheel as a handle, the hard points as handles, and what shows that they are. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import type { PerspectiveCamera } from 'three';
import { documentStore, inputs, posed, view } from '../../state/bench.ts';
import { meshes } from '../../state/meshes.ts';
import type { Pen } from '../drawings/pen.ts';
import { createStrokes } from '../drawings/strokes.ts';
import { PALETTES } from '../palette.ts';
import { countRender } from '../renders.ts';
import type { Surroundings } from '../surroundings.ts';
import { useTheme } from '../useView.ts';
import { placeNow } from './carried.ts';
import { createDots } from './dots.ts';
import { listenToHand } from './hand.ts';
import { markPoints, markWheel, type Ruler } from './marks.ts';
import { createRuler } from './pointer.ts';
import { createPointGrip } from './pointGrip.ts';
import { createWheelGrip } from './wheelGrip.ts';

const WIDTH = 3;
const _place = new Float64Array(3);

interface Props {
  readonly stage: Surroundings;
}

export function Handles({ stage }: Props) {
  countRender();
  const palette = PALETTES[useTheme()];
  const get = useThree((state) => state.get);
  const strokes = useMemo(() => createStrokes(WIDTH), []);
  const rings = useMemo(() => createStrokes(WIDTH, true), []);
  const dots = useMemo(createDots, []);
  const wheel = useMemo(
    () => createWheelGrip({ posed, inputs, drum: () => stage.extent().drum }),
    [stage],
  );
  const points = useMemo(() => createPointGrip({ posed, documentStore, view, meshes }), []);
  const pen = useMemo<Pen>(
    () => ({ line: strokes.line, label: stage.labels.put, sees: stage.labels.sees }),
    [strokes, stage],
  );
  const ringPen = useMemo<Pen>(
    () => ({ line: rings.line, label: stage.labels.put, sees: stage.labels.sees }),
    [rings, stage],
  );
  const ruler = useMemo<Ruler>(
    () => createRuler(() => get().camera as PerspectiveCamera, stage.canvas),
    [get, stage],
  );

  useLayoutEffect(() => {
    strokes.paint(palette);
    rings.paint(palette);
    dots.paint(palette);
  }, [strokes, rings, dots, palette]);
  useEffect(
    () => () => {
      strokes.dispose();
      rings.dispose();
      dots.dispose();
    },
    [strokes, rings, dots],
  );
  useEffect(
    () =>
      listenToHand({
        element: stage.element,
        canvas: stage.canvas,
        camera: () => get().camera as PerspectiveCamera,
        grips: [points, wheel],
        onTake: () => inputs.play(null),
        onChange: () => get().invalidate(),
        way: () => wheel.way,
      }),
    [stage, get, points, wheel],
  );

  useFrame(() => {
    const now = posed.current();
    strokes.begin();
    rings.begin();
    dots.begin();
    markWheel(pen, ringPen, wheel, now, stage.extent().drum);
    if (view.getState().layers.handles) {
      const list = points.carried();
      for (let i = 0; i < list.length; i += 1) {
        placeNow(list[i]!, now.pose, _place);
        dots.put(_place, i === points.hovered || i === points.selected);
      }
      markPoints(pen, points, now, ruler);
    }
    strokes.end();
    rings.end();
    dots.end();
  }, -0.3);

  return (
    <>
      <primitive object={rings.object} />
      <primitive object={strokes.object} />
      <primitive object={dots.object} />
    </>
  );
}
