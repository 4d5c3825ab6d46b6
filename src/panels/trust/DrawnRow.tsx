/** One answer of the drawn corners: what the straight line says, what was drawn, whether they agree, and how it spreads. */
import type { DrawnAnswer, Histogram } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { type FigureStyle, figureStyle } from '../../words/figures.ts';
import { fixed, gapUnit } from '../../words/format.ts';
import { spreadDigits, spreadWords } from '../../words/known.ts';
import { Icon } from '../icons.tsx';
import { answerRow } from './answers.ts';

const WIDTH = 112;
const HEIGHT = 30;

/** Bars to scale over the drawn range; the two lines hold 95 of 100 between them. */
function Bars({ answer }: { readonly answer: DrawnAnswer }) {
  const { from, to, counts }: Histogram = answer.histogram;
  const most = Math.max(...counts);
  const step = WIDTH / counts.length;
  const path = Array.from(counts, (count, i) => {
    const height = (HEIGHT * count) / most;
    return `M${(i * step).toFixed(2)} ${HEIGHT}v${(-height).toFixed(2)}h${(step * 0.86).toFixed(2)}v${height.toFixed(2)}z`;
  }).join('');
  const across = (value: number): number => ((value - from) / (to - from)) * WIDTH;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
      <path className="trust-bars" d={path} />
      {[answer.low, answer.high].map((edge) => (
        <path key={edge} className="trust-edge" d={`M${across(edge).toFixed(2)} 0V${HEIGHT}`} />
      ))}
    </svg>
  );
}

/** The ends of what holds 95 of 100, in digits that its ± is worth. */
function between({ low, high, uncertainty }: DrawnAnswer, plain: FigureStyle): string {
  const digits = spreadDigits(plain, uncertainty);
  const [first, last] = [low, high].map((value) => fixed(value * plain.scale, digits));
  return `${first} to ${last}${plain.unit}`;
}

export function DrawnRow({
  answer,
  unit,
}: {
  readonly answer: DrawnAnswer;
  readonly unit: LengthUnit;
}) {
  const { key, linear, uncertainty, isLinearGood, without } = answer;
  const { label, kind } = answerRow(key);
  const plain = figureStyle(kind, gapUnit(unit));
  return (
    <tr data-drawn={key} data-agrees={isLinearGood}>
      <th scope="row">
        {label}
        <small>
          {between(answer, plain)}
          {without > 0 && `, ${without} drawn corners have none`}
        </small>
      </th>
      <td>
        <span data-part="linear">{spreadWords(plain, linear.uncertainty)}</span>
        <small data-part="drawn">drawn {spreadWords(plain, uncertainty)}</small>
      </td>
      <td>
        <Bars answer={answer} />
        <span className="trust-agrees">
          <Icon name={isLinearGood ? 'clear' : 'warn'} />
          {isLinearGood ? 'agrees' : 'differs'}
        </span>
      </td>
    </tr>
  );
}
