/** Where a point of the page's bench may go, and what of it is on trial; loaded with the sheet that shows it. */

import type { Subject } from '../../solver/index.ts';
import { startWhereService } from '../worker/whereService.ts';
import { documentStore } from './bench.ts';
import { type PlaceMark, placeMark } from './placeMark.ts';
import { createTrials } from './trials.ts';
import { createWhere } from './where.ts';

export const where = createWhere(documentStore, startWhereService);

/** Trials by what is tried, in words. */
export const whereTrials = createTrials<string>(documentStore);

/** What carries the point that moves, and where its link leads. */
const CARRIED: Readonly<Record<Subject, Omit<PlaceMark, 'place'>>> = {
  rodInner: { on: 'rack', to: 'outer' },
  rodOuter: { on: 'knuckle', to: 'inner' },
  upperFront: { on: 'body', to: 'upper' },
  upperRear: { on: 'body', to: 'upper' },
  upperBoth: { on: 'body', to: 'upper' },
};

// The picture of the corner shows where the probe is.
where.subscribe(({ probe, subject }, before) => {
  if (probe === before.probe && subject === before.subject) return;
  placeMark.setState({ mark: probe === null ? null : { place: probe.place, ...CARRIED[subject] } });
});
