/** The ± of a point beside its name: of each coordinate where they differ. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { inputSigma, inputsOf, type Model } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, lengthUnitName, toShown } from '../../words/format.ts';
import { useSettledModel } from '../useSettledModel.ts';

function spreadText(model: Model, path: string, unit: LengthUnit): string {
  const sigmas = inputsOf(model)
    .filter((input) => input.path === path && input.component !== null)
    .map((input) => inputSigma(model, input));
  if (sigmas.every((sigma) => sigma === null)) return '';
  const shown = sigmas.map((sigma) =>
    sigma === null ? '–' : String(Number(toShown(sigma, unit).toFixed(3))),
  );
  const isOne = shown.every((text) => text === shown[0]);
  return ` ±${isOne ? shown[0] : shown.join('/')} ${lengthUnitName(unit)}`;
}

export function PointSpread({ path }: { readonly path: string }) {
  const unit = useStore(view, (state) => gapUnit(state.unit));
  const model = useSettledModel();
  const text = useMemo(() => spreadText(model, path, unit), [model, path, unit]);
  return text === '' ? null : <small className="points-spread">{text}</small>;
}
