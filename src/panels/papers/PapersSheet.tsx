/** The sheet of papers: which one, on what paper, in what unit; seen as it will be printed; printed or saved. */
import './papersSheet.css';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import { paperFileName, saveText } from '../../files/save.ts';
import { paperDocument, type Sheet } from '../../paper/page.ts';
import { curveTable } from '../../paper/sheets/curves.ts';
import { PAPERS } from '../../paper/sheets.ts';
import { type PaperSource, paperSource } from '../../paper/source.ts';
import { documentStore, inputs, view } from '../../state/bench.ts';
import { stops } from '../../state/stopped.ts';
import { useModal } from '../../state/useModal.ts';
import { CautionLine } from '../CautionLine.tsx';
import { Segments, UnitChoice } from '../choices.tsx';
import { Icon } from '../icons.tsx';
import { sheets } from '../sheets.ts';
import { paperChoice } from './choice.ts';
import { Preview } from './Preview.tsx';

const KINDS = ['cycle'] as const;

const SIZES = [
  ['a4', 'A4', 'A4, 210 × 297 mm'],
  ['letter', 'Letter', 'Letter, 8.5 × 11 in'],
] as const;

const VIEWS = [
  ['fit', 'Fit', 'Fit: as wide as there is room'],
  ['full', 'Full size', 'Full size: as it is printed'],
] as const;

/** The design with its cycle, in the unit shown; null until the cycle is worked out. */
function useSource(): { readonly source: PaperSource | null; readonly isPending: boolean } {
  useEffect(() => {
    inputs.play(null);
    return stops.watch(KINDS);
  }, []);
  const model = useStore(documentStore, (state) => state.model);
  const unit = useStore(view, (state) => state.unit);
  const cycle = useStore(stops, (state) => state.cycle);
  const isPending = useStore(stops, (state) => state.pending.has('cycle'));
  const paper = useStore(paperChoice, (state) => state.paper);
  const date = useStore(paperChoice, (state) => state.date);
  const source = useMemo(
    () => (cycle === null || isPending ? null : paperSource(model, cycle, { paper, unit, date })),
    [model, cycle, isPending, paper, unit, date],
  );
  return { source, isPending };
}

function DateField() {
  const date = useStore(paperChoice, (state) => state.date);
  return (
    <label className="papers-date">
      Date
      <input
        type="date"
        value={date}
        onChange={(event) => paperChoice.setState({ date: event.target.value })}
      />
    </label>
  );
}

function PaperList() {
  const chosen = useStore(paperChoice, (state) => state.key);
  return (
    <fieldset className="papers-list" aria-label="Paper">
      {PAPERS.map(({ key, label }) => (
        <button
          key={key}
          type="button"
          aria-pressed={key === chosen}
          onClick={() => paperChoice.setState({ key })}
        >
          {label}
        </button>
      ))}
    </fieldset>
  );
}

function Choices() {
  const paper = useStore(paperChoice, (state) => state.paper);
  const isFullSize = useStore(paperChoice, (state) => state.isFullSize);
  return (
    <div className="papers-choices">
      <Segments
        title="Paper size"
        choices={SIZES}
        chosen={paper}
        onChoose={(size) => paperChoice.setState({ paper: size })}
      />
      <UnitChoice />
      <DateField />
      <Segments
        title="Preview"
        choices={VIEWS}
        chosen={isFullSize ? 'full' : 'fit'}
        onChoose={(size) => paperChoice.setState({ isFullSize: size === 'full' })}
      />
    </div>
  );
}

function titleOf(sheet: Sheet, { model }: PaperSource): string {
  return `${sheet.title}: ${model.name === '' ? 'Without a name' : model.name}`;
}

function savePaper(sheet: Sheet, source: PaperSource): void {
  const text = paperDocument(titleOf(sheet, source), [sheet], source.settings);
  saveText(text, paperFileName(source.model.name, sheet.key, 'html'), 'text/html');
}

function saveTable(source: PaperSource, along: 'travel' | 'rack'): void {
  const csv = curveTable(source, along);
  if (csv !== null) {
    saveText(csv, paperFileName(source.model.name, `curves-${along}`, 'csv'), 'text/csv');
  }
}

interface ActsProps {
  readonly sheet: Sheet | null;
  readonly source: PaperSource | null;
  readonly frame: RefObject<HTMLIFrameElement | null>;
}

function Acts({ sheet, source, frame }: ActsProps) {
  const isReady = sheet !== null && source !== null;
  const hasRack = source?.model.steering?.limit !== undefined;
  return (
    <div className="papers-acts">
      <button
        type="button"
        className="papers-main"
        disabled={!isReady}
        onClick={() => frame.current?.contentWindow?.print()}
      >
        Print…
      </button>
      <button type="button" disabled={!isReady} onClick={() => isReady && savePaper(sheet, source)}>
        Save as HTML
      </button>
      {sheet?.key === 'curves' && source !== null && (
        <>
          <button type="button" onClick={() => saveTable(source, 'travel')}>
            CSV along travel
          </button>
          {hasRack && (
            <button type="button" onClick={() => saveTable(source, 'rack')}>
              CSV along the rack
            </button>
          )}
        </>
      )}
      <p aria-live="polite">
        {sheet === null
          ? 'Cycling the corner…'
          : `${sheet.pages.length} ${sheet.pages.length === 1 ? 'page' : 'pages'}`}
      </p>
    </div>
  );
}

export default function PapersSheet() {
  const { dialog, isClosed } = useModal();
  const frame = useRef<HTMLIFrameElement>(null);
  const { source, isPending } = useSource();
  const { key, isFullSize } = useStore(paperChoice);
  const sheet = useMemo(
    () => (source === null ? null : (PAPERS.find((one) => one.key === key)?.make(source) ?? null)),
    [source, key],
  );
  return (
    <dialog
      ref={dialog}
      className="papers-sheet"
      aria-labelledby="papers-title"
      onClose={() => {
        if (isClosed() && sheets.getState().open === 'papers') sheets.setState({ open: null });
      }}
    >
      <header className="papers-head">
        <h2 id="papers-title">Papers for the shop</h2>
        <button
          type="button"
          className="bar-button bar-icon"
          aria-label="Close papers"
          onClick={() => dialog.current?.close()}
        >
          <Icon name="close" />
        </button>
      </header>
      <div className="papers-body" aria-busy={isPending}>
        <div className="papers-side">
          <PaperList />
          <Choices />
          <Acts sheet={sheet} source={source} frame={frame} />
          <CautionLine />
        </div>
        {sheet !== null && source !== null && (
          <Preview
            key={`${source.settings.paper} ${sheet.key}`}
            frame={frame}
            sheet={sheet}
            title={titleOf(sheet, source)}
            paper={source.settings.paper}
            isFullSize={isFullSize}
          />
        )}
      </div>
    </dialog>
  );
}
