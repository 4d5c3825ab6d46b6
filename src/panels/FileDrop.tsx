/** Files may be dropped anywhere on the page: a model, or a mesh; while one is held over it, the page says so. */
import './fileDrop.css';
import { useLayoutEffect, useState } from 'react';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';

const load = () => import('./files/taker.ts');
let loading: ReturnType<typeof load> | undefined;

/** Loads what takes files, one asking after another: of two files dropped before it is there, the later one stays. */
function taker(): ReturnType<typeof load> {
  loading = loading === undefined ? load() : loading.then(load, load);
  return loading;
}

function carriesFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes('Files') ?? false;
}

/** Calls `onOver` when files come over the window or leave it, and takes what is dropped. */
function listen(onOver: (isOver: boolean) => void): () => void {
  const ending = new AbortController();
  const { signal } = ending;
  const over = (event: DragEvent): void => {
    if (!carriesFiles(event)) return;
    // Without this the browser would leave the bench to show the file.
    event.preventDefault();
    if (event.dataTransfer) event.dataTransfer.dropEffect = 'copy';
    onOver(true);
  };
  addEventListener('dragenter', over, { signal });
  addEventListener('dragover', over, { signal });
  addEventListener(
    'dragleave',
    (event) => {
      // Leaving one element for another of the page has the other as its target.
      if (event.relatedTarget === null) onOver(false);
    },
    { signal },
  );
  addEventListener(
    'drop',
    (event) => {
      onOver(false);
      if (!carriesFiles(event)) return;
      event.preventDefault();
      // Taken hold of now: after the event the browser lets them go.
      const files = [...(event.dataTransfer?.files ?? [])];
      void taker().then(({ takeDropped }) => takeDropped(files));
    },
    { signal },
  );
  return () => ending.abort();
}

export function FileDrop() {
  const [isOver, setOver] = useState(false);
  useLayoutEffect(() => listen(setOver), []);
  const isCompared = useStore(view, ({ work }) => work === 'compare');
  if (!isOver) return null;
  return (
    <div className="file-drop">
      <div>
        <strong>Drop the model file to {isCompared ? 'compare' : 'open'} it</strong>
        <span>
          The present work stays{isCompared ? '' : ' one undo away'}. A mesh becomes an obstacle of
          it.
        </span>
      </div>
    </div>
  );
}
