/** The legend of the small curves, while they have bands. */
import { useStore } from 'zustand';
import { spreads } from '../state/trusted.ts';
import { BAND_WORDS } from './band.ts';

export default function BandWords() {
  const hasBand = useStore(spreads, (state) => state.travel !== null);
  return hasBand ? <span title={BAND_WORDS}>; bands: 95 %</span> : null;
}
