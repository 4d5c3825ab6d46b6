/** One wish: what it is about, what is wanted of it, how near is near enough, and how much it matters. */
import { useStore } from 'zustand';
import { type Aiming, type Lock, MATTERS, type Wish } from '../../../solver/improve/plan.ts';
import { figureOf } from '../../../solver/improve/read.ts';
import { view } from '../../state/bench.ts';
import { sameModel } from '../../state/document.ts';
import { improve, improvePlan } from '../../state/improved.ts';
import type { Row } from '../../state/improvePlan.ts';
import { type Quantity, quantityOf } from '../../words/quantity.ts';
import { HeightChoice } from './HeightChoice.tsx';
import { PlanField } from './PlanField.tsx';
import { RowHead } from './RowHead.tsx';
import type { Design } from './useDesign.ts';
import { AIMING_WORDS, LOCK_WORDS, wishKind, wishSense, wishWords } from './words.ts';

const WEIGHT: Quantity = quantityOf('ratio', 'mm');

function Choice<T extends string>({
  label,
  value,
  words,
  onTake,
}: {
  readonly label: string;
  readonly value: T;
  readonly words: Readonly<Record<T, string>>;
  readonly onTake: (value: T) => void;
}) {
  return (
    <select aria-label={label} value={value} onChange={(event) => onTake(event.target.value as T)}>
      {(Object.keys(words) as T[]).map((each) => (
        <option key={each} value={each}>
          {words[each]}
        </option>
      ))}
    </select>
  );
}

interface Part {
  readonly row: Row<Wish>;
  readonly title: string;
  readonly design: Design;
}

/** Where a wish is read: its stretch, or its height and lock. */
function Where({ row: { id, of }, title, design }: Part) {
  if (of.of === 'least') return null;
  if (of.of === 'toeChange') {
    return (
      <div className="plan-fields">
        <HeightChoice
          name={`${id}.fromTravel`}
          label={`${title}: from`}
          height={of.from}
          design={design}
          onTake={(from) => improvePlan.changeWish(id, { from })}
        />
        to
        <HeightChoice
          name={`${id}.toTravel`}
          label={`${title}: to`}
          height={of.to}
          design={design}
          onTake={(to) => improvePlan.changeWish(id, { to })}
        />
      </div>
    );
  }
  return (
    <div className="plan-fields">
      at
      <HeightChoice
        name={`${id}.travel`}
        label={`${title}: height`}
        height={of.height}
        design={design}
        onTake={(height) => improvePlan.changeWish(id, { height })}
      />
      {of.of === 'measure' && (
        <Choice<Lock>
          label={`${title}: lock`}
          value={of.lock}
          words={LOCK_WORDS}
          onTake={(lock) => improvePlan.changeWish(id, { lock })}
        />
      )}
    </div>
  );
}

function Goal({ row: { id, of }, title, quantity }: Part & { readonly quantity: Quantity }) {
  const sense = wishSense(of, of.value);
  return (
    <div className="plan-fields">
      {of.of === 'measure' || of.of === 'change' ? (
        <Choice<Aiming>
          label={`${title}: how`}
          value={of.aiming}
          words={AIMING_WORDS}
          onTake={(aiming) => improvePlan.changeWish(id, { aiming })}
        />
      ) : (
        AIMING_WORDS[of.of === 'least' ? 'atLeast' : 'atMost']
      )}
      <PlanField
        name={`${id}.value`}
        label={`${title}: wanted`}
        value={of.value}
        quantity={quantity}
        onTake={(value) => improvePlan.changeWish(id, { value })}
      />
      {sense !== undefined && <small>{sense}</small>}
      <span className="plan-pair">
        give or take
        <PlanField
          name={`${id}.within`}
          label={`${title}: give or take`}
          value={of.within}
          quantity={quantity}
          isPositive
          onTake={(within) => improvePlan.changeWish(id, { within })}
        />
      </span>
    </div>
  );
}

function Weight({ row: { id, of }, title }: Part) {
  const known = MATTERS.find(([, weight]) => weight === of.matters);
  return (
    <div className="plan-fields">
      matters
      <select
        aria-label={`${title}: matters`}
        value={known === undefined ? 'own' : String(known[1])}
        onChange={(event) => {
          const matters = Number(event.target.value);
          if (Number.isFinite(matters)) improvePlan.changeWish(id, { matters });
        }}
      >
        {MATTERS.map(([words, weight]) => (
          <option key={words} value={String(weight)}>
            {words}
          </option>
        ))}
        {known === undefined && <option value="own">so many times</option>}
      </select>
      ×
      <PlanField
        name={`${id}.matters`}
        label={`${title}: weight`}
        value={of.matters}
        quantity={WEIGHT}
        isPositive
        onTake={(matters) => improvePlan.changeWish(id, { matters })}
      />
    </div>
  );
}

function nowWords(wish: Wish, figure: number, quantity: Quantity): string {
  const sense = wishSense(wish, figure);
  return `now ${quantity.figure(figure)}${sense === undefined ? '' : `, ${sense}`}`;
}

/** The present figure of a wish; of a least gap or margin only once a search has looked for it. NaN where there is none. */
function useFigure({ row, design }: Part): number {
  const wish = row.of;
  const { found, plan, model } = useStore(improve);
  if (wish.of !== 'least') return figureOf(design.corner, wish);
  if (found === null || plan === null || !sameModel(model, design.model)) return Number.NaN;
  const at = plan.wishes.findIndex((each) => each.of === 'least' && each.key === wish.key);
  return found.wishes[at]?.figure ?? Number.NaN;
}

export function WishRow({ row, design }: { readonly row: Row<Wish>; readonly design: Design }) {
  const unit = useStore(view, (state) => state.unit);
  const title = wishWords(row.of, design.margins, unit);
  const quantity = quantityOf(wishKind(row.of, design.margins), unit);
  const part = { row, title, design };
  const figure = useFigure(part);
  const isLacking = row.of.of !== 'least' && Number.isNaN(figure);
  return (
    <li className="plan-row">
      <RowHead title={title} onRemove={() => improvePlan.remove('wishes', row.id)}>
        {Number.isNaN(figure) ? '' : nowWords(row.of, figure, quantity)}
      </RowHead>
      <Where {...part} />
      <Goal {...part} quantity={quantity} />
      <Weight {...part} />
      {isLacking && <p className="plan-doubt">This design has no such figure there: left out.</p>}
    </li>
  );
}
