/** The section beside the table: whose wheel is drawn in full, where the corner stands, and the contour's points. */
import './sectionPane.css';
import { useState } from 'react';
import { useStore } from 'zustand';
import { wantedGap } from '../../../solver/index.ts';
import { view as viewStore } from '../../state/bench.ts';
import { fitment } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { length } from '../../words/format.ts';
import { gapState, gapVerdict } from '../gap.ts';
import { ContourHandles } from './ContourHandles.tsx';
import { ContourTable } from './ContourTable.tsx';
import type { Column, ColumnKey } from './columns.ts';
import { contourOf } from './contour.ts';
import { closeWindow, wholeWindow } from './drawn.ts';
import { SectionPicture } from './SectionPicture.tsx';
import { type Section, type SectionPlace, useSection } from './useSection.ts';

interface ChoiceProps<T extends string> {
  readonly title: string;
  readonly choices: readonly (readonly [T, string])[];
  readonly chosen: T;
  readonly onChoose: (choice: T) => void;
}

function Choice<T extends string>({ title, choices, chosen, onChoose }: ChoiceProps<T>) {
  return (
    <fieldset className="segments" aria-label={title}>
      {choices.map(([choice, label]) => (
        <button
          key={choice}
          type="button"
          aria-pressed={choice === chosen}
          data-column={choice}
          onClick={() => onChoose(choice)}
        >
          {label}
        </button>
      ))}
    </fieldset>
  );
}

/** "Tie rod to wheel 16.1 mm, clear; at travel 0.0 mm, rack 0.0 mm": the picture in words. */
function pictureWords(column: Column, { view }: Section, unit: LengthUnit): string {
  if (column.model === null || view === null) return `${column.title}: nothing to draw yet.`;
  const wanted = wantedGap(column.model, 'tieRod', 'wheel');
  const { gap } = view.wheelGap;
  return `${column.title}: tie rod to wheel ${length(gap, unit)}, ${gapVerdict(gap, wanted, unit)}; at travel ${length(view.travel, unit)}, rack ${length(view.rack, unit)}.`;
}

export function SectionPane({ columns }: { columns: readonly Column[] }) {
  const unit = useStore(viewStore, (state) => state.unit);
  const isTrial = useStore(fitment, (state) => state.trial !== null);
  const [wanted, setWanted] = useState<ColumnKey>('present');
  const [place, setPlace] = useState<SectionPlace>('bench');
  const [isClose, setClose] = useState<'whole' | 'close'>('whole');
  const [isContour, setContour] = useState(false);
  const column = columns.find(({ key }) => key === wanted) ?? columns[0]!;
  const section = useSection(column.key, column.model, place);
  const { view } = section;
  const contour = isContour ? contourOf(column, isTrial) : null;
  const models = columns.flatMap(({ model }) => (model === null ? [] : [model]));
  const window = isClose === 'close' && view !== null ? closeWindow(view) : wholeWindow(models);
  const gapWanted = column.model === null ? 0 : wantedGap(column.model, 'tieRod', 'wheel');
  const words = pictureWords(column, section, unit);
  return (
    <section className="fitment-section" aria-label="Section through the wheel">
      <div className="fitment-choices">
        <Choice
          title="Drawn in full"
          choices={columns.map(({ key }) => [key, key === 'present' ? 'Present' : key] as const)}
          chosen={column.key}
          onChoose={setWanted}
        />
        <Choice
          title="Where the corner stands"
          choices={[
            ['bench', 'As on the bench'],
            ['worst', 'Rod’s worst place'],
          ]}
          chosen={section.hasWorst ? place : 'bench'}
          onChoose={setPlace}
        />
        <Choice
          title="How much is shown"
          choices={[
            ['whole', 'Whole'],
            ['close', 'At the gap'],
          ]}
          chosen={isClose}
          onChoose={setClose}
        />
        <label className="menu-check">
          <input type="checkbox" checked={isContour} onChange={() => setContour(!isContour)} />
          Rim contour
        </label>
      </div>
      <SectionPicture
        columns={columns}
        chosen={column.key}
        view={view}
        state={view === null ? 'clear' : gapState(view.wheelGap.gap, gapWanted)}
        window={window}
        unit={unit}
        label={words}
        {...(contour === null
          ? {}
          : {
              handles: (scale: number) => (
                <ContourHandles contour={contour} scale={scale} unit={unit} />
              ),
            })}
      />
      <p className="fitment-caption">
        {words} To scale. Everything is turned about the hub axis into this half-plane, so distances
        to wheel and tyre are true in it.
      </p>
      {contour !== null && <ContourTable contour={contour} unit={unit} />}
      {isContour && contour === null && (
        <p className="fitment-caption">The contour can be moved when the trial is over.</p>
      )}
    </section>
  );
}
