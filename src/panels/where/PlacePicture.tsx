/** The picture of the plane: drawn by placePad.ts; React only puts it there. */
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { limitOf } from '../../state/where.ts';
import { where } from '../../state/whereabouts.ts';
import { bandColours, EDGES } from './bands.ts';
import { createPlacePad } from './placePad.ts';
import { aimText, PLANE_WORDS, SUBJECT_WORDS } from './words.ts';

/** Swatches of the bands in words: state is never told by colour alone. */
function Legend() {
  const state = useStore(where);
  const { unit, theme } = useStore(view);
  const limit = limitOf(state);
  const colours = bandColours(theme);
  const texts = EDGES.map((edge) => `to ${aimText(limit * edge, state.aim, unit)}`);
  return (
    <ul className="where-legend" aria-label="Bands of the picture">
      {[...texts, 'more'].map((text, band) => (
        <li key={colours[band]}>
          <i style={{ background: colours[band] }} data-band={band} />
          {band === 0 ? <strong>within the limit, {text}</strong> : text}
        </li>
      ))}
      {state.picture?.values.some(Number.isNaN) === true && (
        <li>
          <i className="where-hatched" style={{ background: colours.at(-1) }} />
          hatched: cannot follow the travel
        </li>
      )}
    </ul>
  );
}

export function PlacePicture() {
  const pad = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const cross = useRef<HTMLDivElement>(null);
  const tag = useRef<HTMLDivElement>(null);
  const across = useRef<HTMLInputElement>(null);
  const up = useRef<HTMLInputElement>(null);
  const subject = useStore(where, (state) => state.subject);
  const plane = useStore(where, (state) => state.plane);
  const isThere = useStore(where, (state) => state.picture !== null);
  const isWhole = useStore(where, (state) => state.progress >= 1);
  useEffect(() => {
    if (!pad.current || !canvas.current || !cross.current || !tag.current) return undefined;
    if (!across.current || !up.current) return undefined;
    return createPlacePad({
      pad: pad.current,
      canvas: canvas.current,
      cross: cross.current,
      tag: tag.current,
      acrossInput: across.current,
      upInput: up.current,
    });
  }, []);
  return (
    <>
      <div ref={pad} className="where-pad" aria-busy={!isWhole}>
        <canvas
          ref={canvas}
          role="img"
          aria-label={`Where ${SUBJECT_WORDS[subject][1]} may go, ${PLANE_WORDS[plane][1]}`}
        />
        <div className="where-over" aria-hidden="true">
          <div ref={cross} className="where-cross" hidden />
          <div ref={tag} className="where-tag" hidden />
        </div>
        <input ref={across} className="where-hidden" type="range" step="any" aria-label="Probe" />
        <input ref={up} className="where-hidden" type="range" step="any" aria-label="Probe" />
        {!isThere && <p className="where-wait">Working the picture out…</p>}
      </div>
      <Legend />
    </>
  );
}
