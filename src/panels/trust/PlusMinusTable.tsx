/** The ± of every point and measured number: one for all coordinates, and those that are known better or worse. */
import { memo, useState } from 'react';
import { useStore } from 'zustand';
import { type Input, inputsOf, type MeasuredUnit, type Model } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit } from '../../words/format.ts';
import { useSettledModel } from '../useSettledModel.ts';
import { GradeChoice, isGraded } from './GradeChoice.tsx';
import { PlusMinusField } from './PlusMinusField.tsx';
import { statedOf } from './tolerances.ts';

/** A point with its three coordinates, or a measured number alone. */
interface Measured {
  readonly path: string;
  readonly label: string;
  readonly of: MeasuredUnit;
  readonly coordinates: readonly Input[];
}

function measuredOf(model: Model): readonly Measured[] {
  const inputs = inputsOf(model);
  const first = inputs.filter(({ component }) => component === null || component === 0);
  return first.map(({ path, pointLabel, unit }) => ({
    path,
    label: pointLabel,
    of: unit,
    coordinates: inputs.filter((input) => input.path === path && input.component !== null),
  }));
}

interface RowProps {
  readonly path: string;
  readonly label: string;
  /** The whole name, where the label is only a part of it. */
  readonly name: string;
  readonly of: MeasuredUnit;
  readonly stated: number | null;
  readonly otherwise: number | null;
  readonly unit: LengthUnit;
  readonly isPart?: boolean;
  readonly opener?: { readonly isOpen: boolean; readonly turn: () => void };
}

const Row = memo(function Row(props: RowProps) {
  const { path, label, name, of, stated, otherwise, unit, isPart = false, opener } = props;
  const point = path.replace(/\.[xyz]$/, '');
  const light = (isLit: boolean): void => view.light(isLit ? `point:${point}` : null);
  const none = otherwise === null ? 'not stated' : 'as the others';
  return (
    <tr
      data-path={path}
      data-stated={stated !== null || undefined}
      data-part={isPart || undefined}
      onPointerEnter={() => light(true)}
      onPointerLeave={() => light(false)}
      onFocus={() => light(true)}
      onBlur={() => light(false)}
    >
      <th scope="row">
        {opener === undefined ? (
          label
        ) : (
          <button
            type="button"
            className="trust-opener"
            aria-expanded={opener.isOpen}
            onClick={opener.turn}
          >
            {label}
          </button>
        )}
      </th>
      <td>
        <PlusMinusField {...{ path, name, of, stated, otherwise, unit }} />
      </td>
      <td>{isGraded(of) && <GradeChoice {...{ path, name, of, stated, none, unit }} />}</td>
    </tr>
  );
});

/** A point's row, and under it, when it is opened, one for each coordinate. */
function Rows({
  model,
  measured,
  unit,
}: {
  readonly model: Model;
  readonly measured: Measured;
  readonly unit: LengthUnit;
}) {
  const { path, label, of, coordinates } = measured;
  const hasOwn = coordinates.some(({ key }) => statedOf(model, key) !== null);
  const [isOpen, setOpen] = useState(hasOwn);
  const stated = statedOf(model, path);
  const otherwise = coordinates.length === 0 ? null : statedOf(model, 'default');
  const opener =
    coordinates.length === 0 ? {} : { opener: { isOpen, turn: () => setOpen(!isOpen) } };
  return (
    <>
      <Row {...{ path, label, name: label, of, stated, otherwise, unit, ...opener }} />
      {isOpen &&
        coordinates.map(({ key, label: whole }) => (
          <Row
            key={key}
            path={key}
            label={whole.slice(label.length + 2)}
            name={whole}
            of={of}
            stated={statedOf(model, key)}
            otherwise={stated ?? otherwise}
            unit={unit}
            isPart
          />
        ))}
    </>
  );
}

/** The ± of all coordinates that state none of their own. */
export function DefaultRow() {
  const stated = useStore(documentStore, ({ model }) => statedOf(model, 'default'));
  const unit = useStore(view, (state) => gapUnit(state.unit));
  const shared = { path: 'default', name: 'every coordinate', of: 'mm' as const, stated, unit };
  return (
    <div className="trust-default" data-path="default">
      <strong>Every coordinate</strong>
      <PlusMinusField {...shared} otherwise={null} />
      <GradeChoice {...shared} none="not stated" />
    </div>
  );
}

export function PlusMinusTable() {
  const model = useSettledModel();
  const unit = useStore(view, (state) => gapUnit(state.unit));
  return (
    <table className="trust-points">
      <thead>
        <tr>
          <th scope="col">Point or number</th>
          <th scope="col">±</th>
          <th scope="col">Measured by</th>
        </tr>
      </thead>
      <tbody>
        {measuredOf(model).map((measured) => (
          <Rows key={measured.path} model={model} measured={measured} unit={unit} />
        ))}
      </tbody>
    </table>
  );
}
