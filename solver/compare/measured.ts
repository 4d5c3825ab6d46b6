/** One design measured at every station: all that a comparison needs of it. */
import { createRodGap, rodGapInto } from '../clearance/rodGap.ts';
import { assemble, type Corner, solve } from '../corner.ts';
import { createPose, type Outcome, type Pose } from '../linkage/solve.ts';
import { AXLE_KEYS, type AxleKey, AxleMeasure, axleInto, createAxle } from '../measures/axle.ts';
import { createMeasures, MEASURE_KEYS, Measure, type MeasureKey } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import type { Model } from '../model/model.ts';
import { STATIONS, type Station, type StationPlace, stationPlace } from './stations.ts';

/** What is compared: the place itself, every measure, and the tie rod's gaps. */
export type ComparedKey = 'travel' | 'rack' | MeasureKey | AxleKey | 'wheelGap' | 'tyreGap';

export interface MeasuredStation {
  /** Null where the design has no such place. */
  readonly place: StationPlace | null;
  /** "reached", or what can no longer be kept. */
  readonly outcome: Outcome;
  /** In the contract's units; a value that does not exist in this pose, or that lacks its parts, is left out. */
  readonly values: ReadonlyMap<ComparedKey, number>;
}

export interface MeasuredDesign {
  readonly model: Model;
  readonly stations: Readonly<Record<Station, MeasuredStation>>;
}

type Values = [ComparedKey, number][];

function ownValues(corner: Corner, pose: Pose): Values {
  const measures = createMeasures();
  measureInto(corner, pose, measures);
  return MEASURE_KEYS.map((key) => [key, measures[Measure[key]]!]);
}

function axleValues(corner: Corner, { travel, rack }: StationPlace): Values {
  const out = new Float64Array(AXLE_KEYS.length);
  axleInto(createAxle(corner), travel, rack, out);
  return AXLE_KEYS.map((key) => [key, out[AxleMeasure[key]]!]);
}

function gapValues(corner: Corner, pose: Pose): Values {
  return (['wheel', 'tyre'] as const).map((other) => {
    const gap = createRodGap(corner, other);
    rodGapInto(gap, pose);
    return [`${other}Gap`, gap.gap];
  });
}

function measureStation(corner: Corner, station: Station): MeasuredStation {
  const place = stationPlace(corner, station);
  if (place === null) return { place, outcome: 'reached', values: new Map() };
  const { travel, rack } = place;
  const pose = createPose();
  const outcome = solve(corner, pose, travel, rack);
  const inputs: Values = [
    ['travel', travel],
    ['rack', rack],
  ];
  const measured: Values =
    outcome === 'reached'
      ? [...ownValues(corner, pose), ...gapValues(corner, pose), ...axleValues(corner, place)]
      : [];
  const values = new Map([...inputs, ...measured].filter(([, value]) => Number.isFinite(value)));
  return { place, outcome, values };
}

/** Measures a sound model at every station. Costs about a millisecond. */
export function measureDesign(model: Model): MeasuredDesign {
  const corner = assemble(model);
  const stations = Object.fromEntries(
    STATIONS.map((station) => [station, measureStation(corner, station)]),
  ) as Record<Station, MeasuredStation>;
  return { model, stations };
}
