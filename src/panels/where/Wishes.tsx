/** What is wanted, over which travel, and how far the point may move. */
import { useStore } from 'zustand';
import { angleOf, RATE_LENGTH, type Reach, usualStretch } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { where } from '../../state/whereabouts.ts';
import { enteredLength, enteredNumber } from '../../words/entry.ts';
import { figureStyle } from '../../words/figures.ts';
import { fixed, gapUnit, lengthNumber, lengthUnitName } from '../../words/format.ts';
import { FigureField } from './FigureField.tsx';
import { rateWords, waysOf } from './words.ts';

/** Greatest way and travel that are taken, mm: beyond it is another vehicle. */
const FARTHEST = 1000;
/** Greatest angle that is taken, degrees. */
const WIDEST = 90;

/** Least limit that is taken, degrees: the page shows no less. */
const LEAST = 0.001;

/** A length of no less than 0, or a sentence on what is wanted. */
function takeWay(text: string, unit: LengthUnit, take: (mm: number) => void): string | null {
  const entered = enteredLength(text, unit);
  if (!entered.ok) return entered.why;
  const { value } = entered;
  if (!(value >= 0 && value <= FARTHEST)) {
    return `Found ${text.trim()}; wanted is a length from 0 to ${lengthNumber(FARTHEST, unit, 0)} ${lengthUnitName(unit)}.`;
  }
  take(value);
  return null;
}

function takeAngle(text: string, least: number, take: (degrees: number) => void): string | null {
  const entered = enteredNumber(text);
  if (!entered.ok) return entered.why;
  const { value } = entered;
  if (!(value >= least && value <= WIDEST)) {
    return `Found ${text.trim()}; wanted is a number from ${fixed(least, least > 0 ? 3 : 0)} to ${WIDEST}.`;
  }
  take(value);
  return null;
}

/** Camber's wanted rate follows the design again. */
function takeNone(): null {
  where.wish({ wanted: { ...where.getState().wanted, camber: null } });
  return null;
}

function Stretch({ unit }: { readonly unit: LengthUnit }) {
  const model = useStore(documentStore, (state) => state.model);
  const stated = useStore(where, (state) => state.stretch);
  const [low, high] = stated ?? usualStretch(model);
  return (
    <>
      <FigureField
        label="Droop to"
        name="Travel looked at, droop"
        shown={lengthNumber(-low, unit)}
        unit={lengthUnitName(unit)}
        take={(text) => takeWay(text, unit, (mm) => where.wish({ stretch: [-mm, high] }))}
      />
      <FigureField
        label="Bump to"
        name="Travel looked at, bump"
        shown={lengthNumber(high, unit)}
        unit={lengthUnitName(unit)}
        take={(text) => takeWay(text, unit, (mm) => where.wish({ stretch: [low, mm] }))}
      />
    </>
  );
}

function Aims({ unit }: { readonly unit: LengthUnit }) {
  const { subject, aim, limits, wanted, question } = useStore(where);
  const of = angleOf(subject);
  const style = figureStyle('degreePerMm', unit);
  const limit = limits[of][aim];
  const perShown = style.scale / RATE_LENGTH;
  const rate = question?.wanted ?? 0;
  const says = rateWords(subject, rate);
  const isRate = aim === 'atRide';
  return (
    <>
      <FigureField
        label="Wanted limit"
        shown={fixed(isRate ? limit * perShown : limit, 3)}
        unit={isRate ? style.unit.trim() : '°'}
        take={(text) =>
          takeAngle(text, LEAST, (value) => where.limit(isRate ? value / perShown : value))
        }
      />
      <FigureField
        label={of === 'toe' ? 'Wanted bump steer' : 'Wanted bump camber'}
        shown={fixed(rate * style.scale, 3)}
        unit={style.unit.trim()}
        says={wanted[of] === null ? `${says}: as the design at ride, until stated` : says}
        take={(text) =>
          of === 'camber' && text.trim() === ''
            ? takeNone()
            : takeAngle(text, -WIDEST, (value) =>
                where.wish({ wanted: { ...wanted, [of]: value / style.scale } }),
              )
        }
      />
    </>
  );
}

function Ways({ unit }: { readonly unit: LengthUnit }) {
  const { plane, reach } = useStore(where);
  const shown = gapUnit(unit);
  const sides = (['second', 'first'] as const).flatMap((axis) =>
    (['plus', 'minus'] as const).map((side) => ({ axis, side })),
  );
  const [first, second] = waysOf(plane);
  return sides.map(({ axis, side }) => {
    const word = (axis === 'first' ? first : second)[side === 'plus' ? 1 : 0];
    const next = (mm: number): Reach => ({ ...reach, [axis]: { ...reach[axis], [side]: mm } });
    return (
      <FigureField
        key={axis + side}
        label={word.charAt(0).toUpperCase() + word.slice(1)}
        name={`May move ${word}`}
        shown={lengthNumber(reach[axis][side], shown)}
        unit={lengthUnitName(shown)}
        take={(text) => takeWay(text, shown, (mm) => where.wish({ reach: next(mm) }))}
      />
    );
  });
}

export function Wishes() {
  const unit = useStore(view, (state) => state.unit);
  return (
    <div className="where-wishes">
      <fieldset>
        <legend>What is wanted</legend>
        <Aims unit={unit} />
        <Stretch unit={gapUnit(unit)} />
      </fieldset>
      <fieldset>
        <legend>How far it may move</legend>
        <Ways unit={unit} />
      </fieldset>
    </div>
  );
}
