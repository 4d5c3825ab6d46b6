/**
 * The picture's program: a fiber root on a canvas of its own, drawn only when something changed. Made with `createRoot`
 * and a chosen list of three's elements, which keeps two fifths of three out of the first download.
 */
import { addAfterEffect, createRoot, type RootState } from '@react-three/fiber';
import { Component, type ReactNode } from 'react';
import { NeutralToneMapping, PCFShadowMap, WebGLRenderer } from 'three';
import { posed, view } from '../state/bench.ts';
import { extendScene } from './extend.ts';
import { createPace } from './pace.ts';
import { createReport } from './report.ts';
import { Scene } from './Scene.tsx';
import type { Trouble } from './Stage.tsx';
import { createStageSurroundings } from './surroundings.ts';

/** The most device pixels per CSS pixel that are drawn. */
const FINEST = 2;
/** The picture rests this long, ms, after its last frame. */
const REST = 160;

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

function createContext(canvas: HTMLCanvasElement): WebGL2RenderingContext | null {
  return canvas.getContext('webgl2', {
    alpha: false,
    antialias: true,
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

/** Makes the programs of what is not shown yet, without waiting for them: no first hover or first drawing stalls. */
function warmUp({ gl, scene, camera }: RootState): void {
  void gl.compileAsync(scene, camera);
}

/** Counts frames, keeps the pace, and tells the page once things rest. */
function watchFrames(element: HTMLElement, store: () => RootState): () => void {
  const pace = createPace();
  const report = createReport(element);
  let timer = 0;
  let scale = 1;
  let lastFrame = 0;
  let isWarm = false;

  function setScale(wanted: number): void {
    if (wanted === scale) return;
    scale = wanted;
    const { gl, viewport } = store();
    gl.setPixelRatio(viewport.dpr * scale);
  }

  function rest(): void {
    timer = 0;
    const left = lastFrame + REST - performance.now();
    if (left > 0) {
      timer = window.setTimeout(rest, left);
      return;
    }
    if (scale !== 1) {
      setScale(pace.rested());
      store().invalidate();
      return;
    }
    pace.rested();
    report.atRest(store().camera);
    if (!isWarm) {
      isWarm = true;
      warmUp(store());
    }
  }

  const leavePose = posed.subscribe(() => {
    pace.asked(performance.now());
    store().invalidate();
  });
  const leaveView = view.subscribe((state, before) => {
    if (state.unit !== before.unit || state.lit !== before.lit || state.layers !== before.layers)
      store().invalidate();
  });
  const leaveFrames = addAfterEffect(() => {
    lastFrame = performance.now();
    report.frame();
    setScale(pace.drawn(lastFrame));
    if (timer === 0) timer = window.setTimeout(rest, REST);
  });
  return () => {
    clearTimeout(timer);
    leavePose();
    leaveView();
    leaveFrames();
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
  const context = createContext(canvas);
  if (context === null) {
    canvas.remove();
    tell('noWebGL');
    return () => undefined;
  }
  extendScene();
  const root = createRoot(canvas);
  const stage = createStageSurroundings(element, canvas, labels);
  let leaveFrames: (() => void) | undefined;
  const configure = (): void => {
    const { clientWidth: width, clientHeight: height } = host;
    void root.configure({
      gl: (defaults) => new WebGLRenderer({ ...defaults, canvas, context, antialias: true }),
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
  leaveFrames = watchFrames(element, store.getState);
  watchContext(canvas, tell, () => store.getState().invalidate());
  const resizes = new ResizeObserver(configure);
  resizes.observe(host);
  return () => {
    resizes.disconnect();
    leaveFrames?.();
    root.unmount();
    canvas.remove();
  };
}
