/** The large curves: any measures over travel or over rack, one chart each, with those of the designs beside the present one. */
import './CurveSheet.css';
import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { rackRange } from '../../solver/model/defaults.ts';
import type { SweepKey } from '../../solver/sweep.ts';
import { documentStore, view } from '../state/bench.ts';
import { closeCurves, curveSheet } from '../state/charted.ts';
import { PRESENT_MARK } from '../state/marks.ts';
import { spreads } from '../state/trusted.ts';
import { useModal } from '../state/useModal.ts';
import { BAND_WORDS } from './band.ts';
import { type CurveSheetWork, createCurveSheet } from './curveSheet.ts';
import type { Along } from './curveTable.ts';
import { CloseIcon } from './icons.tsx';
import { MarkKey } from './MarkKey.tsx';
import { sweepRow, sweepRows } from './sweepRows.ts';
import { useBeside } from './useBeside.ts';

function toggle(key: SweepKey): void {
  const { keys } = curveSheet.getState();
  const next = keys.includes(key) ? keys.filter((other) => other !== key) : [...keys, key];
  curveSheet.setState({ keys: next });
}

function Choices({ keys }: { readonly keys: readonly SweepKey[] }) {
  const model = useStore(documentStore, (state) => state.model);
  return (
    <fieldset className="curve-choices">
      <legend>Curves</legend>
      {sweepRows(model).map(({ key, label }) => (
        <label key={key}>
          <input type="checkbox" checked={keys.includes(key)} onChange={() => toggle(key)} />
          {label}
        </label>
      ))}
    </fieldset>
  );
}

function AlongChoice({
  along,
  onChange,
}: {
  readonly along: Along;
  readonly onChange: (along: Along) => void;
}) {
  const hasSteering = useStore(documentStore, ({ model }) => {
    const [least, most] = rackRange(model.steering);
    return most > least;
  });
  if (!hasSteering) return <span>over travel; no steering limit in this model</span>;
  return (
    <fieldset className="curve-along">
      <legend>over</legend>
      {(['travel', 'rack'] as const).map((choice) => (
        <label key={choice} data-chosen={choice === along || undefined}>
          <input
            type="radio"
            name="curve-along"
            checked={choice === along}
            onChange={() => onChange(choice)}
          />
          {choice}
        </label>
      ))}
    </fieldset>
  );
}

/** "up: top leans out, down: top leans in": what the chart's upright axis means. */
function signWords(key: SweepKey): string {
  const { sense } = sweepRow(key);
  if (sense === undefined) return '';
  const bare = (words: string): string => words.replace(/ ?\{\}/, '').trim();
  return `+ ${bare(sense.positive)}, − ${bare(sense.negative)}`;
}

function download(text: string, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/csv' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** Height of one chart, so that a few fill the sheet and many scroll. */
function chartHeight(count: number): number {
  const room = globalThis.innerHeight - 190;
  return Math.floor(Math.min(420, room / Math.max(1, count)) - 34);
}

/** Keeps the charts of the chosen keys alive. */
function useCharts(keys: readonly SweepKey[], along: Along, lines: string) {
  const root = useRef<HTMLDivElement>(null);
  const at = useRef<HTMLSpanElement>(null);
  const work = useRef<CurveSheetWork | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other lines need other charts.
  useEffect(() => {
    const body = root.current;
    if (body === null || at.current === null) return;
    const part = (key: string, name: string) =>
      body.querySelector<HTMLElement>(`[data-chart="${key}"] [data-part="${name}"]`)!;
    const made = createCurveSheet({
      charts: keys.map((key) => ({
        key,
        place: part(key, 'place'),
        readout: part(key, 'readout'),
      })),
      at: at.current,
      along,
      height: chartHeight(keys.length),
    });
    work.current = made;
    return () => made.stop();
  }, [keys, along, lines]);
  return { root, at, work };
}

export default function CurveSheet() {
  const keys = useStore(curveSheet, (state) => state.keys);
  const [along, setAlong] = useState<Along>('travel');
  const designs = useBeside();
  const theme = useStore(view, (state) => state.theme);
  const lines = designs.map(({ key }) => key).join(' ');
  const { root, at, work } = useCharts(keys, along, `${lines} ${theme}`);
  const { dialog, isClosed } = useModal();
  const hasBand = useStore(spreads, (state) => state[along] !== null);
  return (
    <dialog
      ref={dialog}
      className="curve-sheet"
      aria-labelledby="curve-sheet-title"
      onClose={() => {
        if (isClosed()) closeCurves();
      }}
    >
      <header className="curve-head">
        <h2 id="curve-sheet-title">Curves</h2>
        <AlongChoice along={along} onChange={setAlong} />
        <span ref={at} className="curve-at" />
        <ul className="curve-key" aria-label="Designs">
          <MarkKey mark={PRESENT_MARK} name="present" />
          {designs.map(({ key, mark, name }) => (
            <MarkKey key={key} mark={mark} name={name} />
          ))}
          {hasBand && (
            <li className="mark-key">
              <i className="curve-key-band" /> {BAND_WORDS}
            </li>
          )}
        </ul>
        <button
          type="button"
          className="map-button curve-save"
          disabled={keys.length === 0}
          onClick={() => download(work.current?.csv() ?? '', `curves-over-${along}.csv`)}
        >
          Save as CSV
        </button>
        <button
          type="button"
          className="map-button map-icon"
          aria-label="Close the curves"
          onClick={() => dialog.current?.close()}
        >
          <CloseIcon />
        </button>
      </header>
      <div className="curve-body">
        <Choices keys={keys} />
        <div ref={root} className="curve-charts">
          {keys.length === 0 && <p>Choose a measure to see its curve.</p>}
          {keys.map((key) => (
            <section key={key} data-chart={key} aria-label={`Curve of ${sweepRow(key).label}`}>
              <h3>
                <span>
                  {sweepRow(key).label} <small>{signWords(key)}</small>
                </span>
                <output data-part="readout" aria-live="off" />
              </h3>
              <div data-part="place" />
            </section>
          ))}
        </div>
      </div>
    </dialog>
  );
}
