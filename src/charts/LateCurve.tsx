/** A small curve, loaded behind the first picture; its place is kept until then. */
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
