/** What moves, in which plane, and what it is judged by. */
import { useStore } from 'zustand';
import { AIMS, type Aim, angleOf, PLANES, SUBJECTS } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import { where } from '../../state/whereabouts.ts';
import { gapUnit, length } from '../../words/format.ts';
import { Segments } from '../choices.tsx';
import { PLANE_WORDS, SUBJECT_WORDS } from './words.ts';

/** From the present point to the picture's edges, mm. */
const HALVES = ['5', '10', '20', '40', '80'] as const;

function aimWords(aim: Aim, isToe: boolean): readonly [string, string] {
  if (aim === 'atRide') {
    return ['At ride', isToe ? 'bump steer at ride height' : 'bump camber at ride height'];
  }
  return isToe
    ? ['Over travel', 'greatest change of toe from ride, over the travel']
    : ['Over travel', 'greatest departure of camber from the wanted line, over the travel'];
}

export function Choices() {
  const { subject, plane, aim, half } = useStore(where);
  const unit = useStore(view, (state) => state.unit);
  const isToe = angleOf(subject) === 'toe';
  return (
    <div className="where-choices">
      <Segments
        title="What moves"
        choices={SUBJECTS.map((one) => [
          one,
          SUBJECT_WORDS[one][0],
          `${SUBJECT_WORDS[one][0]}: move ${SUBJECT_WORDS[one][1]}`,
        ])}
        chosen={subject}
        onChoose={(one) => where.wish({ subject: one })}
      />
      <Segments
        title="Seen from"
        choices={PLANES.map((one) => [one, PLANE_WORDS[one][0], `Picture ${PLANE_WORDS[one][1]}`])}
        chosen={plane}
        onChoose={(one) => where.wish({ plane: one })}
      />
      <Segments
        title="Judged by"
        choices={AIMS.map((one) => {
          const [label, words] = aimWords(one, isToe);
          return [one, label, `${label}: ${words}`];
        })}
        chosen={aim}
        onChoose={(one) => where.wish({ aim: one })}
      />
      <Segments
        title="How far the picture goes"
        choices={HALVES.map((one) => {
          const text = length(Number(one), gapUnit(unit), gapUnit(unit) === 'mm' ? 0 : 1);
          return [one, `±${text.replace(/ .*/, '')}`, `Picture to ${text} each way`];
        })}
        chosen={String(half) as (typeof HALVES)[number]}
        onChoose={(one) => where.wish({ half: Number(one) })}
      />
    </div>
  );
}
