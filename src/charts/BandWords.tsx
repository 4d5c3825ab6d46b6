/** The legend of the small curves, while they have bands. */
import { useStore } from 'zustand';
import { spreads } from '../state/trusted.ts';

export default function BandWords() {
  const hasBand = useStore(spreads, (state) => state.travel !== null);
  return hasBand ? <span>; ±: one standard uncertainty, bands: two (95 %)</span> : null;
}
