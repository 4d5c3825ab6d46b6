/** The sheet of curves: every measure along travel straight ahead, and along the rack at ride height. */
import { rackRange } from '../../../solver/model/defaults.ts';
import {
  createRodGaps,
  createSweep,
  type Sweep,
  type SweepKey,
  sweepInto,
} from '../../../solver/sweep.ts';
import { curvesCsv } from '../../charts/curveTable.ts';
import { sweepRow, sweepRows } from '../../charts/sweepRows.ts';
import type { Block } from '../block.ts';
import { heading, paragraph } from '../block.ts';
import { plot } from '../figures/plot.ts';
import { type Markup, markup } from '../markup.ts';
import { type Sheet, sheetPages, widthOf } from '../page.ts';
import type { PaperSource } from '../source.ts';
import { standing } from '../standing.ts';

type Along = 'travel' | 'rack';

/** Places along a curve, ends included. */
const PLACES = 121;

/** What is plotted along travel and along the rack; the tables hold every measure. */
const PLOTTED: Readonly<Record<Along, readonly SweepKey[]>> = {
  travel: [
    'camber',
    'toe',
    'caster',
    'kingpinInclination',
    'scrubRadius',
    'halfTrack',
    'rollCentreHeight',
    'antiDive',
    'damperLength',
    'motionRatio',
    'wheelRate',
    'barMotionRatio',
    'outerAngle',
    'innerAngle',
    'plunge',
    'wheelGap',
    'lowerBallJoint',
    'upperBallJoint',
    'tieRodOuter',
    'tieRodInner',
  ],
  rack: [
    'steerAngle',
    'camber',
    'caster',
    'scrubRadius',
    'casterTrail',
    'wheelGap',
    'tyreGap',
    'outerAngle',
    'tieRodOuter',
    'tieRodInner',
  ],
};

export function sweepOf({ model, corner, ride }: PaperSource, along: Along): Sweep | null {
  const { travel, steering } = model;
  const range = along === 'travel' ? ([-travel.droop, travel.bump] as const) : rackRange(steering);
  if (!(range[1] > range[0])) return null;
  const sweep = createSweep(PLACES);
  sweepInto(corner, createRodGaps(corner), sweep, along, range, along === 'travel' ? 0 : ride);
  return sweep;
}

function keysOf({ model }: PaperSource): readonly SweepKey[] {
  return sweepRows(model).map(({ key }) => key);
}

/** The curves' numbers as CSV, in the file format's own units; null where there is nothing to sweep. */
export function curveTable(source: PaperSource, along: Along): string | null {
  const sweep = sweepOf(source, along);
  const at = along === 'travel' ? 0 : source.ride;
  return sweep === null ? null : curvesCsv(along, at, keysOf(source), sweep, []);
}

const PLOT_HEIGHT = 53;

function plotsOf(source: PaperSource, along: Along, sweep: Sweep): Markup[] {
  const { settings, ride } = source;
  const width = (widthOf(settings.paper) - 6) / 2;
  const present = new Set(keysOf(source));
  return PLOTTED[along]
    .filter((key) => present.has(key))
    .flatMap((key) => {
      const { label, kind, sense } = sweepRow(key);
      const drawn = plot(
        {
          label: label.charAt(0).toUpperCase() + label.slice(1),
          kind,
          sense,
          along,
          xs: sweep.axis,
          ys: sweep.columns[key],
          mark: along === 'travel' ? ride : 0,
        },
        settings.unit,
        width,
        PLOT_HEIGHT,
      );
      return drawn === null ? [] : [drawn];
    });
}

function plotBlocks(plots: readonly Markup[]): Block[] {
  const pairs: Block[] = [];
  for (let i = 0; i < plots.length; i += 2) {
    const piece = markup`<div class="plots">${plots.slice(i, i + 2)}</div>`;
    pairs.push({ height: PLOT_HEIGHT + 1, piece });
  }
  return pairs;
}

export function curvesSheet(source: PaperSource): Sheet {
  const travel = sweepOf(source, 'travel');
  const rack = sweepOf(source, 'rack');
  const [plotsT, plotsR] = [
    travel === null ? [] : plotsOf(source, 'travel', travel),
    rack === null ? [] : plotsOf(source, 'rack', rack),
  ];
  return sheetPages('curves', 'Curves', source, [
    heading('Along wheel travel, rack straight ahead; the dashed line is ride height'),
    ...plotBlocks(plotsT),
    heading('Along the rack, at ride height; the dashed line is straight ahead'),
    ...(rack === null ? [paragraph('The model states no steering limit.')] : plotBlocks(plotsR)),
    ...standing(source),
  ]);
}
