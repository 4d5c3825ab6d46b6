/** The travel–lock map: the whole job at once, and the pad that moves the bench anywhere in it. */
import './MapPad.css';
import { type RefObject, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { openCurves } from '../state/charted.ts';
import { closeUp, showCloseUp } from '../state/closeUp.ts';
import { lockMaps } from '../state/mapped.ts';
import { CloseUpIcon, CurvesIcon, EnlargeIcon, ReduceIcon, WorstIcon } from './icons.tsx';
import { createMapPad, goToWorst } from './mapPad.ts';
import { PairChoice } from './PairChoice.tsx';

/** A near look at the chosen pair's tight spot, in the picture. */
function CloseUpButton() {
  const isShown = useStore(closeUp, (state) => state.isShown);
  return (
    <button
      type="button"
      className="map-button map-icon"
      aria-label="Close-up of the tight spot"
      title="Close-up of the tight spot"
      aria-pressed={isShown}
      onClick={() => showCloseUp(!isShown)}
    >
      <CloseUpIcon />
    </button>
  );
}

/** Escape puts the enlarged card back. */
function useEnlarged(): readonly [boolean, (next: boolean) => void] {
  const [isLarge, setLarge] = useState(false);
  useEffect(() => {
    if (!isLarge) return;
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') setLarge(false);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [isLarge]);
  return [isLarge, setLarge];
}

function useMapPad(card: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const root = card.current;
    if (root === null) return;
    const part = <T extends HTMLElement>(name: string): T => {
      const found = root.querySelector<T>(`[data-part="${name}"]`);
      if (found === null) throw new Error(`The map has no ${name}.`);
      return found;
    };
    return createMapPad({
      card: root,
      pad: part('pad'),
      canvas: part('canvas'),
      legend: part('legend'),
      dot: part('dot'),
      gapTag: part('gap'),
      levelLine: part('level'),
      uprightLine: part('upright'),
      travelTag: part('travel'),
      rackTag: part('rack'),
      travelInput: part('travel-input'),
      rackInput: part('rack-input'),
      worst: part('worst'),
      summary: part('summary'),
      note: part('note'),
    });
  }, [card]);
}

/** Everything in here is placed by mapPad.ts; React only puts it there. */
function Pad() {
  return (
    <div className="map-pad" data-part="pad">
      <canvas
        className="map-canvas"
        data-part="canvas"
        role="img"
        aria-label="Gap of the chosen pair over wheel travel and steering lock"
      />
      <div className="map-over" aria-hidden="true">
        <div className="map-line map-level" data-part="level" />
        <div className="map-line map-upright" data-part="upright" />
        <div className="map-tag map-travel" data-part="travel" />
        <div className="map-tag map-rack" data-part="rack" />
        <div className="map-dot" data-part="dot">
          <i />
        </div>
        <div className="map-tag map-gap" data-part="gap" data-testid="map-gap" />
      </div>
      <input
        className="map-hidden"
        type="range"
        step="any"
        aria-label="Travel, on the map"
        data-part="travel-input"
      />
      <input
        className="map-hidden"
        type="range"
        step="any"
        aria-label="Rack, on the map"
        data-part="rack-input"
      />
    </div>
  );
}

export function MapPad() {
  const card = useRef<HTMLElement>(null);
  const [isLarge, setLarge] = useEnlarged();
  const isPending = useStore(lockMaps, (state) => state.isPending);
  useMapPad(card);
  return (
    <section
      ref={card}
      className={isLarge ? 'map-card map-large' : 'map-card'}
      aria-label="Travel–lock map"
      aria-busy={isPending}
    >
      <header className="map-head">
        <PairChoice />
        <CloseUpButton />
        <button type="button" className="map-button" onClick={() => openCurves()}>
          <CurvesIcon />
          <span className="map-word">Curves</span>
        </button>
        <button
          type="button"
          className="map-button map-icon"
          aria-label={isLarge ? 'Make the map small' : 'Enlarge the map'}
          aria-pressed={isLarge}
          onClick={() => setLarge(!isLarge)}
        >
          {isLarge ? <ReduceIcon /> : <EnlargeIcon />}
        </button>
      </header>
      <Pad />
      <p className="map-note" data-part="note" />
      <canvas
        className="map-legend"
        data-part="legend"
        role="img"
        aria-label="Colours: vermilion and hatched where they touch, amber and dotted below the wanted gap, petrol where clear"
      />
      <button
        type="button"
        className="map-worst"
        data-part="worst"
        title="Go to the worst place"
        onClick={goToWorst}
      >
        <WorstIcon />
        <strong data-worst-gap="">…</strong>
        <span data-worst-place="" />
        <em>go there</em>
      </button>
      <p className="map-hidden" data-part="summary" />
    </section>
  );
}
