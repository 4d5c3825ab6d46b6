/** The papers there are, and how each is made. */
import type { CycleGrid, Model } from '../../solver/index.ts';
import type { Sheet } from './page.ts';
import { alignmentSheet } from './sheets/alignment.ts';
import { curvesSheet, curveTable } from './sheets/curves.ts';
import { cycleSheet } from './sheets/cycle.ts';
import { inspectorSheet } from './sheets/inspector.ts';
import { setUpSheet } from './sheets/setUp.ts';
import { type PaperSettings, type PaperSource, paperSource } from './source.ts';

export interface Paper {
  /** Part of a file's name. */
  readonly key: string;
  readonly label: string;
  make(source: PaperSource): Sheet;
}

/** In the order people ask for them. */
export const PAPERS: readonly Paper[] = [
  { key: 'set-up', label: 'Set-up sheet', make: setUpSheet },
  {
    key: 'alignment',
    label: 'Alignment sheet',
    make: (source) => alignmentSheet(source, false),
  },
  {
    key: 'alignment-blank',
    label: 'Alignment sheet, to fill in',
    make: (source) => alignmentSheet(source, true),
  },
  { key: 'cycle', label: 'Cycle sheet', make: cycleSheet },
  { key: 'inspector', label: 'Inspector’s note', make: inspectorSheet },
  { key: 'curves', label: 'Curves', make: curvesSheet },
];

/** Every paper of a design whose cycle has been worked out. */
export function sheetsOf(model: Model, cycle: CycleGrid, settings: PaperSettings): Sheet[] {
  const source = paperSource(model, cycle, settings);
  return PAPERS.map(({ make }) => make(source));
}

export interface Table {
  /** A file's name without its ending. */
  readonly key: string;
  readonly csv: string;
}

/** The curves' numbers, a table along travel and one along the rack where the model states a steering limit. */
export function tablesOf(model: Model, cycle: CycleGrid, settings: PaperSettings): Table[] {
  const source = paperSource(model, cycle, settings);
  return (['travel', 'rack'] as const).flatMap((along) => {
    const csv = curveTable(source, along);
    return csv === null ? [] : [{ key: `curves-${along}`, csv }];
  });
}
