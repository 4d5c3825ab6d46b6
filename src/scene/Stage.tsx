/**
 * The stage: the corner in three dimensions, behind the panels. The picture's program comes in a chunk of its own, so
 * that the panels appear at once and go on working where there can be no picture.
 */
import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { documentStore, inputs, view } from '../state/bench.ts';
import { afterFirstPicture, settleFirstPicture } from '../state/firstPicture.ts';
import { countRender } from './renders.ts';
import './stage.css';

/** Why there is no picture just now. */
export type Trouble = 'noWebGL' | 'lost' | 'notLoaded' | 'failed';

const SENTENCES: Readonly<Record<Trouble, string>> = {
  noWebGL:
    'This browser gives no WebGL 2, so there is no picture of the corner. The numbers, the map and the curves go on working.',
  lost: 'The graphics driver took the picture away. It comes back by itself; the numbers, the map and the curves go on working.',
  notLoaded:
    'The picture’s program could not be loaded, so there is no picture of the corner. The numbers, the map and the curves go on working; reload the page to try again.',
  failed:
    'The picture met a fault and stopped. The numbers, the map and the curves go on working; reload the page to bring it back.',
};

// Asked for at once, beside the page's first render, and kept from being reported as unhandled.
const loading = import('./picture.tsx');
loading.catch(() => undefined);

/** The sentence stands where the picture would: in what the panels leave free. */
function TroubleLine({ trouble }: { readonly trouble: Trouble }) {
  const { top, right, bottom, left } = useStore(view, (state) => state.insets);
  return (
    <div
      className="stage-trouble"
      role="status"
      style={{ inset: `${top}px ${right}px ${bottom}px ${left}px` }}
    >
      <p>{SENTENCES[trouble]}</p>
    </div>
  );
}

/** Cycles are played by a program that is loaded behind the first picture; one that was asked for before starts then. */
function runPlayerLate(): () => void {
  let leave: (() => void) | null = null;
  let isLeft = false;
  void afterFirstPicture(() => import('../state/player.ts')).then(({ runPlayer }) => {
    if (!isLeft) leave = runPlayer(documentStore, inputs);
  });
  return () => {
    isLeft = true;
    leave?.();
  };
}

export function Stage() {
  countRender();
  const frame = useRef<HTMLElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const labels = useRef<HTMLDivElement>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const theme = useStore(view, (state) => state.theme);

  useEffect(runPlayerLate, []);

  useEffect(() => {
    let close: (() => void) | undefined;
    let isLeft = false;
    const tell = (met: Trouble | null): void => {
      setTrouble(met);
      if (met !== null) settleFirstPicture();
    };
    loading
      .then(({ openPicture }) => {
        const { current: stage } = frame;
        if (isLeft || stage === null || picture.current === null || labels.current === null) return;
        close = openPicture(stage, picture.current, labels.current, tell);
      })
      .catch((error: unknown) => {
        tell('notLoaded');
        console.info(error);
      });
    return () => {
      isLeft = true;
      close?.();
    };
  }, []);

  return (
    <section
      ref={frame}
      className="stage"
      data-stage=""
      data-theme={theme}
      aria-label="Picture of the corner, to scale"
      aria-describedby="stage-how"
    >
      <p id="stage-how" className="stage-how">
        Drag the wheel up or down to move it through its travel, sideways to steer; hold Alt for
        both at once; Escape puts it back. Drag beside the wheel to look from elsewhere, scroll to
        come nearer. Keys 1 to 5 choose a view; the arrow keys move travel and rack.
      </p>
      <div ref={picture} className="stage-picture" aria-hidden="true" />
      <div ref={labels} className="stage-labels" aria-hidden="true" />
      {trouble !== null && <TroubleLine trouble={trouble} />}
    </section>
  );
}
