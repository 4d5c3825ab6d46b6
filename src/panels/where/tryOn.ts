/** Puts the point at a place on the bench, as a trial that is kept or taken back. */
import { placeOf, type Subject, type Vector3, withPlaceWritten } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { whereTrials } from '../../state/whereabouts.ts';
import { moveWords, SUBJECT_WORDS } from './words.ts';

/** Tries the subject there, in place of what this sheet has on trial; false where the design has changed besides. */
export function tryPlace(subject: Subject, place: Vector3): boolean {
  whereTrials.takeBack();
  const { model } = documentStore.getState();
  const words = moveWords(placeOf(model, subject), place, view.getState().unit);
  const changed = withPlaceWritten(model, subject, place);
  return whereTrials.tryOn(`${SUBJECT_WORDS[subject][1]} ${words}`, model, changed);
}
