/** Loads the sheet of large curves when it is first opened. */
import { lazy, Suspense } from 'react';
import { useStore } from 'zustand';
import { curveSheet } from '../state/charted.ts';

const CurveSheet = lazy(() => import('./CurveSheet.tsx'));

export function CurveSheetHost() {
  const isOpen = useStore(curveSheet, (state) => state.isOpen);
  if (!isOpen) return null;
  return (
    <Suspense fallback={null}>
      <CurveSheet />
    </Suspense>
  );
}
