/**
 * The picture's program: a fiber root on a canvas of its own, drawn only when something changed. Made with `createRoot`
 * and a chosen list of three's elements, which keeps two fifths of three out of the first download.
 */
import { addAfterEffect, addEffect, createRoot, type RootState } from '@react-three/fiber';
import { Component, type ReactNode } from 'react';
import { NeutralToneMapping, PCFShadowMap, WebGLRenderer } from 'three';
import { posed, view } from '../state/bench.ts';
import { extendScene } from './extend.ts';
import { createPace, type Pace } from './pace.ts';
import { createReport } from './report.ts';
import { Scene } from './Scene.tsx';
import type { Trouble } from './Stage.tsx';
import { drawsInSoftware } from './software.ts';
import { createStageSurroundings, type Surroundings } from './surroundings.ts';

/** The most device pixels per CSS pixel that are drawn. */
const FINEST = 2;
/** The picture rests this long, ms, after its last frame. */
const REST = 220;

type Tell = (trouble: Trouble | null) => void;

/** Keeps a fault in the picture from taking the page along. */
class Guard extends Component<{ readonly tell: Tell; readonly children: ReactNode }> {
  override state = { isBroken: false };

  static getDerivedStateFromError(): { isBroken: boolean } {
    return { isBroken: true };
  }

  override componentDidCatch(): void {
    this.props.tell('failed');
  }

  override render(): ReactNode {
    return this.state.isBroken ? null : this.props.children;
  }
}

function createContext(
  canvas: HTMLCanvasElement,
  isSoftware: boolean,
): WebGL2RenderingContext | null {
  return canvas.getContext('webgl2', {
    alpha: false,
    antialias: !isSoftware,
    depth: true,
    stencil: false,
    powerPreference: 'high-performance',
  });
}

function createCanvas(host: HTMLElement): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  host.append(canvas);
  return canvas;
}

/** Sentences for a context that goes and comes back; three itself makes everything anew. */
function watchContext(canvas: HTMLCanvasElement, tell: Tell, invalidate: () => void): void {
  canvas.addEventListener('webglcontextlost', () => tell('lost'));
  canvas.addEventListener('webglcontextrestored', () => {
    tell(null);
    invalidate();
  });
}

function setUp(gl: WebGLRenderer): void {
  gl.toneMapping = NeutralToneMapping;
  gl.toneMappingExposure = 1;
  gl.shadowMap.enabled = true;
  gl.shadowMap.type = PCFShadowMap;
}

/** Asks for the programs of what is not shown yet, so that the first hover or drawing need not wait for them. */
function warmUp({ gl, scene, camera }: RootState): void {
  gl.compile(scene, camera);
}

/** Draws at the resolution the pace allows, and tells the page once things rest. */
function watchFrames(stage: Surroundings, pace: Pace, store: () => RootState): () => void {
  const report = createReport(stage.element);
  let timer = 0;
  let scale = 1;
  let lastFrame = 0;
  let isSharp = false;
  let isWarm = false;

  /** Before a frame, never after it: a new resolution empties the canvas. */
  function before(): void {
    const moving = pace.drawn(performance.now());
    const wanted = isSharp ? pace.rest : (moving ?? scale);
    // Shadows are a second drawing of everything: where drawing is slow they follow once the picture rests.
    store().gl.shadowMap.autoUpdate = isSharp || moving === null || pace.isQuick;
    isSharp = false;
    if (wanted === scale) return;
    scale = wanted;
    const { gl, viewport } = store();
    gl.setPixelRatio(Math.min(FINEST, viewport.dpr * scale));
  }

  function after(): void {
    lastFrame = performance.now();
    report.frame();
    if (timer === 0) timer = window.setTimeout(rest, REST);
  }

  function rest(): void {
    timer = 0;
    const left = lastFrame + REST - performance.now();
    if (left > 0) {
      timer = window.setTimeout(rest, left);
    } else if (scale !== pace.rest && !stage.isHeld()) {
      isSharp = true;
      store().invalidate();
    } else {
      report.atRest(store().camera);
      if (!isWarm) warmUp(store());
      isWarm = true;
    }
  }

  const leaveBefore = addEffect(before);
  const leaveAfter = addAfterEffect(after);
  return () => {
    clearTimeout(timer);
    leaveBefore();
    leaveAfter();
  };
}

/** Asks for a frame when the pose went stale, or when what is drawn over it changes. */
function watchBench(pace: Pace, store: () => RootState): () => void {
  const leavePose = posed.subscribe(() => {
    pace.asked(performance.now());
    store().invalidate();
  });
  const leaveView = view.subscribe((state, before) => {
    if (state.unit !== before.unit || state.lit !== before.lit || state.layers !== before.layers)
      store().invalidate();
  });
  return () => {
    leavePose();
    leaveView();
  };
}

/**
 * Opens the picture inside `host`, with its labels in `labels`; `element` gets the data attributes. Returns the way to
 * close it. Where there is no WebGL 2 it only says so.
 */
export function openPicture(
  element: HTMLElement,
  host: HTMLElement,
  labels: HTMLElement,
  tell: Tell,
): () => void {
  const canvas = createCanvas(host);
  const isSoftware = drawsInSoftware();
  const context = createContext(canvas, isSoftware);
  if (context === null) {
    canvas.remove();
    tell('noWebGL');
    return () => undefined;
  }
  extendScene();
  const root = createRoot(canvas);
  const pace = createPace(isSoftware);
  const stage = createStageSurroundings(element, canvas, labels, () => {
    pace.asked(performance.now());
  });
  const configure = (): void => {
    const { clientWidth: width, clientHeight: height } = host;
    void root.configure({
      gl: (defaults) => new WebGLRenderer({ ...defaults, canvas, context }),
      frameloop: 'demand',
      dpr: [1, FINEST],
      shadows: 'percentage',
      camera: { fov: 26, near: 10, far: 10_000 },
      size: { width, height, top: 0, left: 0 },
      onCreated: ({ gl }) => setUp(gl as WebGLRenderer),
    });
  };
  configure();
  const store = root.render(
    <Guard tell={tell}>
      <Scene stage={stage} />
    </Guard>,
  );
  const leaveFrames = watchFrames(stage, pace, store.getState);
  const leaveBench = watchBench(pace, store.getState);
  watchContext(canvas, tell, () => store.getState().invalidate());
  const resizes = new ResizeObserver(configure);
  resizes.observe(host);
  return () => {
    resizes.disconnect();
    leaveFrames();
    leaveBench();
    root.unmount();
    canvas.remove();
  };
}
