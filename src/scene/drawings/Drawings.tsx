/** All drawings over the bodies: those switched on, the lit one, and the warning where the rod comes too near its wheel. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { Camera } from 'three';
import { useStore } from 'zustand';
import { Slot } from '../../../solver/index.ts';
import { posed, view } from '../../state/bench.ts';
import { closeUp } from '../../state/closeUp.ts';
import { beside } from '../../state/compared.ts';
import { designs } from '../../state/designs.ts';
import { type Box, litBox } from '../../state/litBox.ts';
import { lockMaps } from '../../state/mapped.ts';
import { DESIGN_COLOURS } from '../../state/marks.ts';
import { placeMark } from '../../state/placeMark.ts';
import type { Posed } from '../../state/posed.ts';
import { LAYERS } from '../../state/view.ts';
import type { Extent } from '../camera/extent.ts';
import { CloseUp } from '../closeUp/CloseUp.tsx';
import { gridWords } from '../ground/scale.ts';
import { PALETTES } from '../palette.ts';
import { countRender } from '../renders.ts';
import type { Surroundings } from '../surroundings.ts';
import { useTheme } from '../useView.ts';
import { LAYER_DRAWINGS, litDrawing } from './chosen.ts';
import { createCones } from './cones.ts';
import { drawEnvelopeName } from './envelope.ts';
import { drawGapWarning } from './gap.ts';
import { drawOther, lookOf } from './otherDesign.ts';
import { createPaths, followPaths } from './paths.ts';
import type { Pen } from './pen.ts';
import { drawPlaceMark } from './placeMark.ts';
import { createProbe } from './probe.ts';
import { createStrokes } from './strokes.ts';
import type { Subject } from './subject.ts';
import { drawTightSpot } from './tightSpot.ts';

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

/** Tells the page where the lit drawing lies, so that no words are laid over it. */
function tell({ canvas, element }: Surroundings, key: string | null, box: Box | null): void {
  const { left, top } = canvas.getBoundingClientRect();
  const onPage = box && {
    left: box.left + left,
    top: box.top + top,
    right: box.right + left,
    bottom: box.bottom + top,
  };
  litBox.setState({ key, box: onPage });
  element.dataset['lit'] = JSON.stringify({ key, ...onPage });
}

/** The designs beside the present one, each where it can stand. */
function drawBeside(pen: Pen, now: Posed): void {
  const others = beside.current();
  for (let i = 0; i < others.length; i += 1) {
    const design = others[i]!;
    const isThere = design.key === 'yesterday' || design.posed.pose.outcome === 'reached';
    if (isThere) drawOther(pen, now, design.posed, lookOf(design));
  }
}

interface Props {
  readonly stage: Surroundings;
}

export function Drawings({ stage }: Props) {
  countRender();
  const theme = useTheme();
  const palette = PALETTES[theme];
  const strokes = useMemo(() => createStrokes(WIDTH), []);
  const cones = useMemo(createCones, []);
  const { labels } = stage;
  const pen = useMemo<Pen>(
    () => ({ line: strokes.line, label: labels.put, sees: labels.sees, cone: cones.cone }),
    [strokes, labels, cones],
  );
  const probe = useMemo(() => createProbe(pen), [pen]);
  /** The lit key whose box the page was last told. */
  const told = useRef<string | null>(null);
  const subject = useMemo<Sitter>(
    () => ({ now: posed.current(), extent: stage.extent(), paths: createPaths() }),
    [stage],
  );
  useLayoutEffect(() => {
    const tones = DESIGN_COLOURS[theme];
    strokes.paint(palette, tones);
    cones.paint(palette);
    for (const [tone, colour] of Object.entries(tones)) {
      stage.element.style.setProperty(`--${tone}`, colour);
    }
  }, [strokes, cones, palette, theme, stage]);
  useEffect(
    () => () => {
      strokes.dispose();
      cones.dispose();
    },
    [strokes, cones],
  );
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => designs.subscribe(() => invalidate()), [invalidate]);
  useEffect(
    () =>
      lockMaps.subscribe((state, before) => {
        if (state.pair !== before.pair) invalidate();
      }),
    [invalidate],
  );
  useEffect(() => placeMark.subscribe(() => invalidate()), [invalidate]);

  useFrame(({ camera, size }) => {
    const { layers, lit, wheelShell } = view.getState();
    subject.now = posed.current();
    subject.extent = stage.extent();
    followPaths(subject.paths, subject.now.corner, subject.now.pose.data[Slot.rack]!);
    strokes.begin();
    cones.begin();
    drawGapWarning(pen, subject);
    drawTightSpot(pen, subject);
    drawPlaceMark(pen, subject);
    drawBeside(pen, subject.now);
    const drawing = litDrawing(lit);
    if (lit === told.current) drawing?.(pen, subject);
    else {
      told.current = lit;
      probe.begin(camera, size.width, size.height);
      drawing?.(probe.pen, subject);
      tell(stage, lit, probe.box());
    }
    for (let i = 0; i < LAYERS.length; i += 1) {
      const layer = LAYERS[i]!;
      if (layers[layer]) LAYER_DRAWINGS[layer]?.(pen, subject);
    }
    if (layers.grid)
      gridWords(pen, subject.extent, subject.now.pose.data[Slot.contact + 2]!, looksAcross(camera));
    if (wheelShell !== 'solid') drawEnvelopeName(pen, subject);
    strokes.end();
    cones.end();
  }, -0.2);

  const isNear = useStore(closeUp, (state) => state.isShown || state.cam !== null);
  return (
    <>
      <primitive object={cones.object} />
      <primitive object={strokes.object} />
      {isNear && <CloseUp stage={stage} />}
    </>
  );
}
