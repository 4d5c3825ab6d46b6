/** A small curve and what its band is, loaded behind the first picture; the curve's place is kept until then. */
import { lazy, Suspense } from 'react';
import { afterFirstPicture } from '../state/firstPicture.ts';
import type { CurveProps } from './Curve.tsx';

const Curve = lazy(() =>
  afterFirstPicture(() => import('./Curve.tsx')).then((late) => ({ default: late.Curve })),
);

export function LateCurve(props: CurveProps) {
  return (
    <Suspense fallback={<div style={{ height: props.height }} aria-hidden="true" />}>
      <Curve {...props} />
    </Suspense>
  );
}

const BandWords = lazy(() => afterFirstPicture(() => import('./BandWords.tsx')));

export function LateBandWords() {
  return (
    <Suspense fallback={null}>
      <BandWords />
    </Suspense>
  );
}
