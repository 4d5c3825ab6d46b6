/** All drawings over the bodies: those switched on, the lit one, and the warning where the rod comes too near its wheel. */
import { useFrame } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import type { Camera } from 'three';
import { Slot } from '../../../solver/index.ts';
import { posed, view } from '../../state/bench.ts';
import type { Posed } from '../../state/posed.ts';
import { LAYERS } from '../../state/view.ts';
import type { Extent } from '../camera/extent.ts';
import { gridWords } from '../ground/scale.ts';
import { PALETTES } from '../palette.ts';
import { countRender } from '../renders.ts';
import type { Surroundings } from '../surroundings.ts';
import { useTheme } from '../useView.ts';
import { LAYER_DRAWINGS, litDrawing } from './chosen.ts';
import { drawGapWarning } from './gap.ts';
import { createPaths, followPaths } from './paths.ts';
import type { Pen } from './pen.ts';
import { createStrokes } from './strokes.ts';
import type { Subject } from './subject.ts';
import { drawYesterday } from './yesterday.ts';

const WIDTH = 2.2;

/** A subject whose fields are set anew each frame. */
interface Sitter extends Subject {
  now: Posed;
  extent: Extent;
}

/** True unless the camera's right runs along the vehicle rather than across it. */
function looksAcross({ matrixWorld }: Camera): boolean {
  return Math.abs(matrixWorld.elements[2]!) >= Math.abs(matrixWorld.elements[0]!);
}

interface Props {
  readonly stage: Surroundings;
}

export function Drawings({ stage }: Props) {
  countRender();
  const palette = PALETTES[useTheme()];
  const strokes = useMemo(() => createStrokes(WIDTH), []);
  const { labels } = stage;
  const pen = useMemo<Pen>(
    () => ({ line: strokes.line, label: labels.put, sees: labels.sees }),
    [strokes, labels],
  );
  const subject = useMemo<Sitter>(
    () => ({ now: posed.current(), extent: stage.extent(), paths: createPaths() }),
    [stage],
  );
  useLayoutEffect(() => strokes.paint(palette), [strokes, palette]);
  useEffect(() => () => strokes.dispose(), [strokes]);

  useFrame(({ camera }) => {
    const { layers, lit } = view.getState();
    subject.now = posed.current();
    subject.extent = stage.extent();
    followPaths(subject.paths, subject.now.corner, subject.now.pose.data[Slot.rack]!);
    strokes.begin();
    drawGapWarning(pen, subject);
    const held = posed.held();
    if (held !== null) drawYesterday(pen, subject.now, held);
    litDrawing(lit)?.(pen, subject);
    for (let i = 0; i < LAYERS.length; i += 1) {
      const layer = LAYERS[i]!;
      if (layers[layer]) LAYER_DRAWINGS[layer]?.(pen, subject);
    }
    if (layers.grid)
      gridWords(pen, subject.extent, subject.now.pose.data[Slot.contact + 2]!, looksAcross(camera));
    strokes.end();
  }, -0.2);

  return <primitive object={strokes.object} />;
}
