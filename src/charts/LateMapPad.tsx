/** The travel–lock map, loaded behind the first picture; its card keeps its place until then. */
import './LateMapPad.css';
import { lazy, Suspense } from 'react';
import { afterFirstPicture } from '../state/firstPicture.ts';

const MapPad = lazy(() =>
  afterFirstPicture(() => import('./MapPad.tsx')).then(({ MapPad: Card }) => ({ default: Card })),
);

export function LateMapPad() {
  return (
    <Suspense fallback={<div className="map-pad-awaited" aria-hidden="true" />}>
      <MapPad />
    </Suspense>
  );
}
