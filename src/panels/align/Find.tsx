/** What is wanted, among what can be reached; the button that finds the settings for it, and what was found. */
import './found.css';
import { useStore } from 'zustand';
import { alignment } from '../../state/aligned.ts';
import { Found } from './Found.tsx';
import { Region } from './Region.tsx';
import { Targets } from './Targets.tsx';

export function Find() {
  const isAsked = useStore(alignment, (state) => state.isAsked);
  return (
    <section className="align-find" aria-label="Find the settings">
      <h3>What is wanted</h3>
      <Targets />
      <Region />
      {isAsked ? (
        <Found />
      ) : (
        <button type="button" className="bar-button align-go" onClick={alignment.find}>
          Find the settings
        </button>
      )}
    </section>
  );
}
