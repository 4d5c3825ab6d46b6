/** What people want to know of the corner, before and after the fit, and how well it is known. */
import type { Fit } from '../../../solver/fit/fit.ts';
import { inWords, measureRow } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { gapUnit } from '../../words/format.ts';
import { knownFigure, spreadWords } from '../../words/known.ts';

/** The number cut to what is known of it, whether that leaves 0 of it, and its ±. */
function known(value: number, plusMinus: number, plain: ReturnType<typeof figureStyle>) {
  const figure = knownFigure(plain, plusMinus)?.figure ?? plain;
  const steps = figureSteps(value, figure);
  return {
    number: figureNumber(steps, figure),
    isZero: steps === 0,
    spread: spreadWords(plain, plusMinus),
  };
}

export function AnswerTable({ fit, unit }: { readonly fit: Fit; readonly unit: LengthUnit }) {
  return (
    <table className="fit-table fit-answers">
      <thead>
        <tr>
          <th scope="col">At ride height</th>
          <th scope="col">Points as measured</th>
          <th scope="col">Fitted</th>
        </tr>
      </thead>
      <tbody>
        {fit.answers.map(({ key, before, after, plusMinusBefore, plusMinusAfter }) => {
          const row = measureRow(key);
          const plain = figureStyle(row.kind, gapUnit(unit));
          const was = known(before, plusMinusBefore, plain);
          const is = known(after, plusMinusAfter, plain);
          return (
            <tr key={key} data-answer={key}>
              <th scope="row">
                {row.label}
                <small>{inWords(row, is.isZero ? 0 : after)}</small>
              </th>
              <td>
                {was.number}
                <small>{was.spread}</small>
              </td>
              <td>
                <strong>{is.number}</strong>
                <small>{is.spread}</small>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
