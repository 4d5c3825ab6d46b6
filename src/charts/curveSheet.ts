/** What moves on the sheet of large curves: swept again when the design or the other input changed, marked every frame. */

import { type Band, type Corner, Measure } from '../../solver/index.ts';
import { rackRange } from '../../solver/model/defaults.ts';
import type { SweepKey } from '../../solver/sweep.ts';
import {
  createRodGaps,
  createSweep,
  type RodGaps,
  type Sweep,
  sweepInto,
} from '../../solver/sweep.ts';
import { inputs, posed, view } from '../state/bench.ts';
import type { BesidePosed } from '../state/beside.ts';
import { beside } from '../state/compared.ts';
import { onFrame, requestFrame } from '../state/frame.ts';
import { travelRange } from '../state/inputs.ts';
import type { Posed } from '../state/posed.ts';
import { spreads } from '../state/trusted.ts';
import type { LengthUnit } from '../state/view.ts';
import {
  type FigureStyle,
  figureDifference,
  figureNumber,
  figureSteps,
  figureStyle,
} from '../words/figures.ts';
import { fromShown, length, toShown } from '../words/format.ts';
import { bandEdgesInto, createBandEdges } from './band.ts';
import { type Along, axisNames, curvesCsv } from './curveTable.ts';
import { createLargeCurve, type Edges, type LargeCurve, loadCharts } from './largeCurve.ts';
import { inkOf, readInks } from './paper.ts';
import { sweepRow } from './sweepRows.ts';

/** Poses of a large curve. */
const POSES = 201;
const LEAST_HEIGHT = 150;

/** One chart of the sheet, and the line of figures over it. */
export interface ChartPlace {
  readonly key: SweepKey;
  readonly place: HTMLElement;
  readonly readout: HTMLElement;
}

export interface CurveSheetParts {
  readonly charts: readonly ChartPlace[];
  /** Says at which travel or rack the curves are read. */
  readonly at: HTMLElement;
  readonly along: Along;
  readonly height: number;
}

/** A design's sweep and the gaps made for its corner. */
interface Swept {
  readonly sweep: Sweep;
  corner: Corner | null;
  gaps: RodGaps | null;
}

function createSwept(): Swept {
  return { sweep: createSweep(POSES), corner: null, gaps: null };
}

/** As far as a design itself goes; a steering without a stated limit goes everywhere. */
function ownRange({ model }: Corner, along: Along): readonly [number, number] | undefined {
  if (along === 'travel') return travelRange(model);
  return model.steering?.limit === undefined ? undefined : rackRange(model.steering);
}

/** Sweeps a design over a range, as far into it as its own goes. */
function sweepDesign(
  swept: Swept,
  corner: Corner,
  along: Along,
  range: readonly [number, number],
  at: number,
): void {
  if (swept.corner !== corner) {
    swept.corner = corner;
    swept.gaps = createRodGaps(corner);
  }
  sweepInto(corner, swept.gaps, swept.sweep, along, range, at, ownRange(corner, along));
}

/** The band about a swept curve in shown units; null where none is known: gaps have none. */
function edgesOf(sweep: Sweep, key: SweepKey, band: Band | null, scale: number): Edges | null {
  if (band === null || key === 'wheelGap' || key === 'tyreGap') return null;
  const edges = createBandEdges(sweep.axis.length);
  bandEdgesInto(edges, band, band.uncertainties[key], sweep.axis, sweep.columns[key]);
  const shown = (values: Float64Array) =>
    Array.from(values, (value) => (Number.isNaN(value) ? null : value * scale));
  return { low: shown(edges.low), high: shown(edges.high) };
}

export interface CurveSheetWork {
  csv(): string;
  stop(): void;
}

export function createCurveSheet(parts: CurveSheetParts): CurveSheetWork {
  const { along, charts } = parts;
  const present = createSwept();
  const others: Swept[] = [];
  const curves: LargeCurve[] = [];
  let designs: readonly BesidePosed[] = [];
  /** Lines beside the present one that the charts were made with. */
  let lineCount = 0;
  let at = Number.NaN;
  let hovered: number | null = null;
  let isStopped = false;
  let writtenUnit: LengthUnit | null = null;
  let writtenBand: Band | null = null;

  /** Sweeps all designs if anything they depend on changed; true when it did. */
  function sweep(): boolean {
    const { corner } = posed.current();
    const designsNow = beside.current();
    const { travel, rack } = inputs.getState();
    const other = along === 'travel' ? rack : travel;
    if (present.corner === corner && designs === designsNow && at === other) return false;
    at = other;
    designs = designsNow;
    const { model } = corner;
    const range = along === 'travel' ? travelRange(model) : rackRange(model.steering);
    sweepDesign(present, corner, along, range, at);
    designs.forEach((design, i) => {
      others[i] ??= createSwept();
      sweepDesign(others[i], design.posed.corner, along, range, at);
    });
    return true;
  }

  function write(): void {
    // A design has just come or gone: the sheet is about to make other charts.
    if (designs.length !== lineCount) return;
    const { unit } = view.getState();
    const xs = Array.from(present.sweep.axis, (mm) => toShown(mm, unit));
    charts.forEach(({ key }, i) => {
      const { scale } = figureStyle(sweepRow(key).kind, unit);
      const shown = ({ sweep: { columns } }: Swept) =>
        Array.from(columns[key], (value) => (Number.isNaN(value) ? null : value * scale));
      const edges = edgesOf(present.sweep, key, spreads.getState()[along], scale);
      curves[i]?.write(xs, shown(present), others.slice(0, designs.length).map(shown), edges);
    });
    const other = along === 'travel' ? 'rack' : 'travel';
    parts.at.textContent = `at ${other} ${length(at, unit)}`;
  }

  /** Value of a measure where the bench stands, or where the pointer is. */
  function valueAt(swept: Swept, now: Posed, key: SweepKey): number {
    if (hovered !== null) return swept.sweep.columns[key][hovered] ?? Number.NaN;
    if (now.pose.outcome !== 'reached') return Number.NaN;
    if (key === 'wheelGap') return now.wheelGap.gap;
    if (key === 'tyreGap') return now.tyreGap.gap;
    return now.measures[Measure[key]]!;
  }

  /** ", B 1.20° (+0.10°)": a design's value and its difference from the present one. */
  function besideText(
    design: BesidePosed,
    swept: Swept,
    key: SweepKey,
    now: number,
    figure: FigureStyle,
  ): string {
    const value = valueAt(swept, design.posed, key);
    const name = design.key === 'yesterday' ? 'yesterday' : design.mark.letter;
    if (!Number.isFinite(value)) return `, ${name} none`;
    // The difference is rounded, not the difference of what was rounded: as the readings do it.
    const change = figureSteps(value - now, figure);
    const text = `, ${name} ${figureNumber(figureSteps(value, figure), figure)}${figure.unit}`;
    return Number.isFinite(change)
      ? `${text} (${figureDifference(change, figure)}${figure.unit})`
      : text;
  }

  /** Figures at the pointer, or else at the present place: present, and each design with its difference from it. */
  function read(): void {
    const { unit } = view.getState();
    const here = hovered === null ? inputs.getState()[along] : present.sweep.axis[hovered]!;
    for (const { key, readout } of charts) {
      const figure = figureStyle(sweepRow(key).kind, unit);
      const now = valueAt(present, posed.current(), key);
      const shown = Number.isFinite(now)
        ? figureNumber(figureSteps(now, figure), figure) + figure.unit
        : 'none';
      const texts = designs.map((design, i) => besideText(design, others[i]!, key, now, figure));
      readout.textContent = `${along} ${length(here, unit)}: ${shown}${texts.join('')}`;
    }
  }

  function pick(x: number): void {
    const mm = fromShown(x, view.getState().unit);
    inputs.play(null);
    if (along === 'travel') inputs.setTravel(mm);
    else inputs.setRack(mm);
  }

  function onEveryFrame(): void {
    const { unit } = view.getState();
    const isNew = sweep();
    const band = spreads.getState()[along];
    if (isNew || writtenUnit !== unit || band !== writtenBand) write();
    writtenUnit = unit;
    writtenBand = band;
    const here = toShown(inputs.getState()[along], unit);
    for (const curve of curves) curve.mark(here);
    read();
  }

  let leaveFrames: (() => void) | null = null;
  const exits = [
    spreads.subscribe(requestFrame),
    ...(along === 'rack' ? [spreads.watch('rack')] : []),
  ];
  const size = new ResizeObserver(() => {
    charts.forEach(({ place }, i) => {
      curves[i]?.resize(place.clientWidth);
    });
  });

  void loadCharts().then((Chart) => {
    if (isStopped) return;
    const inks = readInks(parts.at);
    const { theme } = view.getState();
    const lines = beside.current().map(({ mark }) => {
      return { colour: inkOf(mark, inks, theme), dashes: mark.dashes };
    });
    lineCount = lines.length;
    for (const { key, place } of charts) {
      curves.push(
        createLargeCurve(Chart, {
          place,
          height: Math.max(LEAST_HEIGHT, parts.height),
          beside: lines,
          names: () => axisNames(along, key, view.getState().unit),
          onHover(index) {
            hovered = index;
            read();
          },
          onPick: pick,
        }),
      );
      size.observe(place);
    }
    leaveFrames = onFrame(onEveryFrame);
  });

  return {
    csv() {
      sweep();
      const keys = charts.map(({ key }) => key);
      const named = designs.map(({ key, name, mark }, i) => {
        const called = key === 'yesterday' ? name : `${mark.letter} ${name}`;
        return { name: called, sweep: others[i]!.sweep };
      });
      return curvesCsv(along, at, keys, present.sweep, named);
    },
    stop() {
      isStopped = true;
      leaveFrames?.();
      for (const exit of exits) exit();
      size.disconnect();
      for (const curve of curves) curve.destroy();
    },
  };
}
