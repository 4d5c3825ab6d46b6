/** The sheet of wheel and tyre: what is fitted beside up to three candidates, their figures, and the section they share. */
import './fitmentSheet.css';
import { type KeyboardEvent, useEffect } from 'react';
import { useStore } from 'zustand';
import { documentStore, inputs, notices } from '../../state/bench.ts';
import { NAMES } from '../../state/fitment.ts';
import { fitment, fittedGaps } from '../../state/fitted.ts';
import { meshes } from '../../state/meshes.ts';
import { useModal } from '../../state/useModal.ts';
import { UnitChoice } from '../choices.tsx';
import { Icon } from '../icons.tsx';
import { sheets } from '../sheets.ts';
import { type Column, useColumns } from './columns.ts';
import { FitmentTable } from './FitmentTable.tsx';
import { SectionPane } from './SectionPane.tsx';
import { TrialBar } from './TrialButtons.tsx';

const TRIAL_NOTICE = 'fitment-trial';

/** Says on the bench, while the sheet is closed, that a candidate is on trial. */
function sayTrial(): void {
  const { trial } = fitment.getState();
  if (trial === null) return;
  notices.say({
    key: TRIAL_NOTICE,
    kind: 'status',
    text: `Candidate ${trial.name} is on the bench; the design before it is held as the ghost. Undo takes it back as well.`,
    action: { label: 'Take it back', run: fitment.takeBack },
  });
}

fitment.subscribe(({ trial }, before) => {
  if (trial === null && before.trial !== null) notices.dismiss(TRIAL_NOTICE);
});

/** Asks for the gaps of every column there is, with the meshes that are at hand, and lets go of those that are gone. */
function useGaps(columns: readonly Column[]): void {
  const files = useStore(meshes, (state) => state.files);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a mesh that has come in changes what is asked for.
  useEffect(() => {
    for (const key of ['present', ...NAMES]) {
      const model = columns.find((column) => column.key === key)?.model ?? null;
      if (model === null) fittedGaps.leave(key);
      else fittedGaps.ask(key, model);
    }
  }, [columns, files]);
  useEffect(() => {
    inputs.play(null);
    notices.dismiss(TRIAL_NOTICE);
    return () => {
      fittedGaps.stop();
      sayTrial();
    };
  }, []);
}

/** Undo and redo work in the sheet as on the bench; a field keeps its own. */
function onKeyDown(event: KeyboardEvent): void {
  const isTyped = event.target instanceof HTMLInputElement && event.target.type === 'text';
  if (isTyped || !(event.ctrlKey || event.metaKey)) return;
  const key = event.key.toLowerCase();
  if (key !== 'z' && key !== 'y') return;
  event.preventDefault();
  if (key === 'y' || event.shiftKey) documentStore.redo();
  else documentStore.undo();
}

function Undo() {
  const canUndo = useStore(documentStore, (state) => state.past.length > 0);
  return (
    <button
      type="button"
      className="bar-button bar-icon"
      aria-label="Undo"
      title="Undo (Ctrl+Z)"
      disabled={!canUndo}
      onClick={documentStore.undo}
    >
      <Icon name="undo" />
    </button>
  );
}

export default function FitmentSheet() {
  const { dialog, isClosed } = useModal();
  const columns = useColumns();
  useGaps(columns);
  const close = (): void => dialog.current?.close();
  return (
    <dialog
      ref={dialog}
      className="fitment-sheet"
      aria-labelledby="fitment-title"
      onKeyDown={onKeyDown}
      onClose={() => {
        if (isClosed()) sheets.setState({ open: null });
      }}
    >
      <header className="fitment-head">
        <h2 id="fitment-title">Wheel and tyre</h2>
        <p>Load index and tyre pressure are out of scope.</p>
        <UnitChoice />
        <Undo />
        <button
          type="button"
          className="bar-button bar-icon"
          aria-label="Close wheel and tyre"
          onClick={close}
        >
          <Icon name="close" />
        </button>
      </header>
      <TrialBar onSee={close} />
      <div className="fitment-body">
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard. */}
        <section className="fitment-scroll" aria-label="Comparison" tabIndex={0}>
          <FitmentTable columns={columns} />
        </section>
        <SectionPane columns={columns} />
      </div>
    </dialog>
  );
}
