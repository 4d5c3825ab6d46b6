/** How a point or number was measured, as one of the grades of common practice: sets its ±. */
import { GRADES, type Grade, type MeasuredUnit } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { angle, length } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { withStated } from './tolerances.ts';

export const GRADE_WORDS: Readonly<Record<Grade['name'], string>> = {
  tape: 'tape',
  plumbBob: 'plumb bob',
  bench: 'bench',
};

/** Grades speak of coordinates and of angles. */
export type GradedUnit = Extract<MeasuredUnit, 'mm' | 'degree'>;

export function isGraded(of: MeasuredUnit): of is GradedUnit {
  return of === 'mm' || of === 'degree';
}

/** "2.5 mm", "0.25°". */
export function gradeWorth(grade: Grade, of: GradedUnit, unit: LengthUnit): string {
  if (of === 'degree') return angle(grade.degree, 2);
  return length(grade.mm, unit, unit === 'mm' && grade.mm % 0.5 !== 0 ? 2 : 1);
}

interface GradeChoiceProps {
  readonly path: string;
  readonly name: string;
  readonly of: GradedUnit;
  readonly stated: number | null;
  /** What it is called when nothing is stated: "as the others", "not stated". */
  readonly none: string;
  readonly unit: LengthUnit;
}

export function GradeChoice({ path, name, of, stated, none, unit }: GradeChoiceProps) {
  const key = of === 'mm' ? 'mm' : 'degree';
  const grade = GRADES.find((one) => one[key] === stated);
  const choose = (value: string): void => {
    const chosen = GRADES.find((one) => one.name === value)?.[key] ?? null;
    editModel((model) => withStated(model, path, chosen));
  };
  return (
    <select
      aria-label={`How it was measured: ${name}`}
      value={grade?.name ?? (stated === null ? '' : 'own')}
      onChange={(event) => choose(event.target.value)}
    >
      <option value="">{none}</option>
      {GRADES.map((one) => (
        <option key={one.name} value={one.name}>
          {GRADE_WORDS[one.name]}, {gradeWorth(one, of, unit)}
        </option>
      ))}
      {grade === undefined && stated !== null && <option value="own">as typed</option>}
    </select>
  );
}
