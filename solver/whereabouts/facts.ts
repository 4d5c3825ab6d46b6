/** What a design with the point at a place comes to: lengths to be cut, and what else moves. */

import { findLeast } from '../certify/descend.ts';
import { certifiedRange } from '../certify/range.ts';
import { createRodGap, rodGapInto } from '../clearance/rodGap.ts';
import { assemble, type Corner, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { distance } from '../math/vec3.ts';
import { AxleMeasure, axleInto, createAxle } from '../measures/axle.ts';
import { createMeasures, Measure, type MeasureKey } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import type { MeasureRow } from '../measures/rows/row.ts';
import { measureRow, type UnitKind } from '../measures/table.ts';
import { rackRange, rideTravel, tieRodChange } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { angleOf, type Question } from './question.ts';

export interface Fact {
  readonly key: string;
  readonly label: string;
  readonly kind: UnitKind;
  /** null where the number does not exist, or its parts are not in the model. */
  readonly value: number | null;
  /** The row of the table of measures that says what the sign means. */
  readonly row?: MeasureRow;
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** A measure at one travel, rack 0; null out of reach. */
function at(corner: Corner, key: MeasureKey, travel: number): number | null {
  const [pose, measures] = [createPose(), createMeasures()];
  if (solve(corner, pose, travel, 0) !== 'reached') return null;
  measureInto(corner, pose, measures);
  return finite(measures[Measure[key]]!);
}

function measured(corner: Corner, key: MeasureKey, travel: number, where: string, tag = ''): Fact {
  const row = measureRow(key);
  const value = at(corner, key, travel);
  return { key: `${key}${tag}`, label: `${row.label} ${where}`, kind: row.kind, value, row };
}

/** Ackermann with the rack at the end that is farther from straight ahead, at ride. */
function ackermann(corner: Corner): Fact {
  const row = measureRow('ackermann');
  const [low, high] = rackRange(corner.model.steering);
  const out = new Float64Array(Object.keys(AxleMeasure).length).fill(Number.NaN);
  const rack = Math.abs(high) >= Math.abs(low) ? high : low;
  if (rack !== 0) axleInto(createAxle(corner), rideTravel(corner.model.travel), rack, out);
  const value = finite(out[AxleMeasure.ackermann]!);
  return { key: 'ackermann', label: 'Ackermann at full lock', kind: row.kind, value, row };
}

/** Least gap of rod and wheel that is found over the whole range of travel and rack. */
function wheelGap(corner: Corner): Fact {
  const gap = createRodGap(corner, 'wheel');
  const found = findLeast(
    corner,
    createPose(),
    (pose) => {
      rodGapInto(gap, pose);
      return gap.gap;
    },
    certifiedRange(corner.model),
  );
  const label = 'least gap of tie rod and wheel';
  return { key: 'wheelGap', label, kind: 'millimetre', value: finite(found.gap) };
}

function lengthFact(key: string, label: string, value: number): Fact {
  return { key, label, kind: 'millimetre', value };
}

function rodFacts(model: Model, corner: Corner, ride: number): readonly Fact[] {
  const { tieRod } = model;
  const rod = distance(tieRod.inner, tieRod.outer) + tieRodChange(tieRod);
  return [
    lengthFact('rodLength', 'tie rod, centre to centre', rod),
    measured(corner, 'bumpSteer', ride, 'at ride'),
    measured(corner, 'steerPerRack', ride, 'at ride'),
    ackermann(corner),
    wheelGap(corner),
  ];
}

function armFacts(
  model: Model,
  corner: Corner,
  ride: number,
  { stretch }: Question,
): readonly Fact[] {
  const { pivots } = corner.linkage;
  const { ballJoint, frontPivot, rearPivot } = model.upperArm;
  return [
    lengthFact('frontLength', 'upper arm, front pivot to ball', distance(frontPivot, ballJoint)),
    lengthFact('rearLength', 'upper arm, rear pivot to ball', distance(rearPivot, ballJoint)),
    lengthFact('pivotSpan', 'upper pivots apart', distance(pivots.upperFront, pivots.upperRear)),
    measured(corner, 'camber', stretch[1], 'at full bump', 'Bump'),
    measured(corner, 'camber', ride, 'at ride', 'Ride'),
    measured(corner, 'camber', stretch[0], 'at full droop', 'Droop'),
    measured(corner, 'bumpCamber', ride, 'at ride'),
    measured(corner, 'bumpSteer', ride, 'at ride'),
    measured(corner, 'rollCentreHeight', ride, 'at ride'),
    wheelGap(corner),
  ];
}

/** What the model comes to, for the point that is asked about: read off the model itself, solved anew. */
export function factsOf(model: Model, question: Question): readonly Fact[] {
  const corner = assemble(model);
  const ride = rideTravel(model.travel);
  return angleOf(question.subject) === 'toe'
    ? rodFacts(model, corner, ride)
    : armFacts(model, corner, ride, question);
}
