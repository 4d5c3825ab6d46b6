/** The work sheet of drawings: arms and tie rod at full size, to print over pages or to save, and what is to be cut. */
import './drawingsSheet.css';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { type Allowances, NO_ALLOWANCES } from '../../../solver/index.ts';
import { plainFileName, saveText } from '../../files/save.ts';
import { cutListTable, drawingsOf } from '../../paper/drawing/drawings.ts';
import { drawingDxf } from '../../paper/drawing/dxf.ts';
import type { DrawingUnit } from '../../paper/drawing/figures.ts';
import type { Drawing } from '../../paper/drawing/marks.ts';
import { drawingSvg } from '../../paper/drawing/svg.ts';
import { tiledDocument, tilesOf } from '../../paper/drawing/tiles.ts';
import type { PaperSize } from '../../paper/paperSize.ts';
import { documentStore, view } from '../../state/bench.ts';
import { Segments } from '../choices.tsx';
import { CutList } from './CutList.tsx';
import { printDocument } from './printDocument.ts';

type PartKey = 'upper-arm' | 'lower-arm' | 'tie-rod';

const PARTS: readonly (readonly [PartKey, string, string])[] = [
  ['upper-arm', 'Upper arm', 'Upper arm'],
  ['lower-arm', 'Lower arm', 'Lower arm'],
  ['tie-rod', 'Tie rod', 'Tie rod'],
];
const HANDS: readonly (readonly ['left' | 'right', string, string])[] = [
  ['left', 'Left', 'Left hand'],
  ['right', 'Right', 'Right hand'],
];
const PAPERS: readonly (readonly [PaperSize, string, string])[] = [
  ['a4', 'A4', 'A4 paper'],
  ['letter', 'Letter', 'Letter paper'],
];

/** On the sheet the drawing is seen small: thin lines would be lost. */
const SMALL_WEIGHT = 3;

/** Addresses of the drawing as it is saved, and as it is shown small. */
function useAddresses(drawing: Drawing): readonly [string, string] {
  const addresses = useMemo(
    () =>
      [1, SMALL_WEIGHT].map((weight) =>
        URL.createObjectURL(new Blob([drawingSvg(drawing, weight)], { type: 'image/svg+xml' })),
      ),
    [drawing],
  );
  useEffect(
    () => () => {
      for (const address of addresses) URL.revokeObjectURL(address);
    },
    [addresses],
  );
  return [addresses[0]!, addresses[1]!];
}

/** The drawing as a picture: an image runs nothing that a model's text may hold. */
function Preview({ drawing }: { readonly drawing: Drawing }) {
  const [whole, small] = useAddresses(drawing);
  return (
    <a className="drawing-preview" href={whole} target="_blank" rel="noreferrer">
      <img src={small} alt={`${drawing.title}: three views with their dimensions`} />
      <span>Open it large in a tab of its own</span>
    </a>
  );
}

function today(): string {
  return new Date().toLocaleDateString('en-CA');
}

function Takings({ drawing, paper }: { readonly drawing: Drawing; readonly paper: PaperSize }) {
  const name = useStore(documentStore, (state) => state.model.name);
  const pages = tilesOf(drawing, paper).tiles.length;
  const file = (ending: string): string => `${plainFileName(name)}-${drawing.key}.${ending}`;
  return (
    <div className="drawing-takings">
      <button
        type="button"
        className="bar-button"
        onClick={() => printDocument(tiledDocument(drawing, paper))}
      >
        Print at full size: {pages} {pages === 1 ? 'page' : 'pages'}
      </button>
      <button
        type="button"
        className="bar-button"
        onClick={() => saveText(drawingSvg(drawing), file('svg'), 'image/svg+xml')}
      >
        Save SVG
      </button>
      <button
        type="button"
        className="bar-button"
        onClick={() => saveText(drawingDxf(drawing), file('dxf'), 'image/vnd.dxf')}
      >
        Save DXF
      </button>
    </div>
  );
}

export default function DrawingsSheet() {
  const model = useStore(documentStore, (state) => state.model);
  const shownUnit = useStore(view, (state) => state.unit);
  const [part, setPart] = useState<PartKey>('lower-arm');
  const [hand, setHand] = useState<'left' | 'right'>('left');
  const [paper, setPaper] = useState<PaperSize>('a4');
  const [allowances, setAllowances] = useState<Allowances>(NO_ALLOWANCES);
  const unit: DrawingUnit = shownUnit === 'mm' ? 'mm' : 'inch';
  const drawing = useMemo(
    () => drawingsOf(model, { unit, hand, date: today() }).find(({ key }) => key.startsWith(part))!,
    [model, unit, hand, part],
  );
  return (
    <div className="drawings-sheet">
      <div className="drawing-choices">
        <Segments title="Part" choices={PARTS} chosen={part} onChoose={setPart} />
        <Segments title="Hand" choices={HANDS} chosen={hand} onChoose={setHand} />
        <Segments title="Paper" choices={PAPERS} chosen={paper} onChoose={setPaper} />
      </div>
      <Preview drawing={drawing} />
      <Takings drawing={drawing} paper={paper} />
      <p className="drawing-note">
        Third-angle projection, design pose, centres only. Print at 100 % with no fitting, and
        measure the 100 mm bar on every page before anything is cut. Strength of tubes, welds and
        tabs is not checked; mock up and cycle before welding. Local vehicle codes and part makers’
        limits come first.
      </p>
      <CutList
        table={cutListTable(model, unit, allowances)}
        allowances={allowances}
        unit={shownUnit}
        name={plainFileName(model.name)}
        onAllow={setAllowances}
      />
    </div>
  );
}
