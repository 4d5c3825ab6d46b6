/** Shims on a pivot of the upper arm: a stack that grows and shrinks by one piece, or is typed. */
import { useStore } from 'zustand';
import type { Model, Shim } from '../../../solver/index.ts';
import { shimDirection, shimLimit, shimThickness } from '../../../solver/model/defaults.ts';
import { view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { length, lengthNumber, lengthUnitName } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { withoutValue, withValue } from '../points/place.ts';
import { Entry } from './Entry.tsx';
import { directionText, takeDirection, takeLength } from './HardwareFields.tsx';
import { counted, type Pivot, waysOf } from './hardware.ts';

/** The shims on a pivot, if there are any. */
export function shimOn({ upperArm }: Model, { arm, end }: Pivot): Shim | undefined {
  return arm === 'upperArm' ? upperArm[`${end}Shim`] : undefined;
}

function shimPath({ arm, end }: Pivot): string {
  return `${arm}.${end}Shim`;
}

/** The model with an empty stack on a pivot. */
export function withShim(model: Model, pivot: Pivot): Model {
  return withValue(model, shimPath(pivot), { thickness: 0 });
}

/** Of one piece where the model does not say, mm: common practice, no source. */
const USUAL_STEP = 1;

/** Drawn to scale among themselves: the stack against the greatest that fits. */
function Stack({ shim }: { readonly shim: Shim }) {
  const thickness = shimThickness(shim);
  const limit = shimLimit(shim);
  const step = shim.step ?? USUAL_STEP;
  const pieces = Math.max(0, Math.round(thickness / step));
  return (
    <svg className="shim-stack" viewBox="0 0 100 34" aria-hidden="true" focusable="false">
      <rect className="shim-room" x="2" y="3" width="96" height="28" />
      <rect className="shim-fill" x="2" y="3" width={(96 * thickness) / limit} height="28" />
      {pieces <= 40 &&
        Array.from({ length: Math.max(0, pieces - 1) }, (_, i) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: pieces of a stack are alike.
            key={i}
            className="shim-edge"
            d={`M${2 + (96 * step * (i + 1)) / limit} 3v28`}
          />
        ))}
    </svg>
  );
}

function wordsOf(shim: Shim, unit: LengthUnit): string {
  const thickness = shimThickness(shim);
  if (thickness === 0) return 'no shims';
  const way = waysOf(shimDirection(shim))[0];
  const pieces = shim.step === undefined ? '' : ` (${counted(thickness / shim.step, 'piece')})`;
  return `${length(thickness, unit, 2)} ${way}${pieces}`;
}

function StepButton({
  pivot,
  shim,
  sense,
}: {
  readonly pivot: Pivot;
  readonly shim: Shim;
  readonly sense: 1 | -1;
}) {
  const thickness = shimThickness(shim);
  const limit = shimLimit(shim);
  const wanted = thickness + sense * (shim.step ?? USUAL_STEP);
  const taken = Number(Math.min(limit, Math.max(0, wanted)).toFixed(6));
  return (
    <button
      type="button"
      className="bar-button"
      aria-label={`One shim ${sense > 0 ? 'in' : 'out'}: ${pivot.name}`}
      title={sense > 0 ? 'One shim in' : 'One shim out'}
      disabled={taken === thickness}
      onClick={() => editModel((model) => withValue(model, `${shimPath(pivot)}.thickness`, taken))}
    >
      {sense > 0 ? '+' : '−'}
    </button>
  );
}

export function ShimCard({ pivot, shim }: { readonly pivot: Pivot; readonly shim: Shim }) {
  const unit = useStore(view, (state) => state.unit);
  const fine = unit === 'mm' ? 'mm' : 'inch';
  const path = shimPath(pivot);
  const name = `${pivot.name} shims`;
  const optional = (mm: number | undefined) => (mm === undefined ? '' : lengthNumber(mm, fine, 2));
  return (
    <section className="align-card" aria-label={name} data-hardware={path}>
      <h4>{name}</h4>
      <Stack shim={shim} />
      <div className="shim-row">
        <StepButton pivot={pivot} shim={shim} sense={-1} />
        <Entry
          label=""
          name={`${name}, thickness together`}
          shown={lengthNumber(shimThickness(shim), fine, 2)}
          unit={lengthUnitName(unit)}
          take={(text) => takeLength(`${path}.thickness`, text)}
        />
        <StepButton pivot={pivot} shim={shim} sense={1} />
      </div>
      <span className="dial-words">{wordsOf(shim, fine)}</span>
      <details>
        <summary>Piece, room, direction</summary>
        <div className="align-fields">
          <Entry
            label="One piece"
            name={`${name}, one piece`}
            placeholder={`step ${length(USUAL_STEP, fine, 2)}`}
            shown={optional(shim.step)}
            unit={lengthUnitName(unit)}
            take={(text) => takeLength(`${path}.step`, text, true)}
          />
          <Entry
            label="Most that fits"
            name={`${name}, most that fits`}
            placeholder={length(shimLimit(shim), fine)}
            shown={optional(shim.max)}
            unit={lengthUnitName(unit)}
            take={(text) => takeLength(`${path}.max`, text, true)}
          />
          <Entry
            label={`Direction: ${waysOf(shimDirection(shim))[0]}`}
            name={`${name}, direction: forward, left, up`}
            shown={directionText(shimDirection(shim))}
            take={(text) => takeDirection(`${path}.direction`, text)}
          />
        </div>
        <button
          type="button"
          className="bar-button"
          onClick={() => editModel((model) => withoutValue(model, path))}
        >
          Remove these shims
        </button>
      </details>
    </section>
  );
}
