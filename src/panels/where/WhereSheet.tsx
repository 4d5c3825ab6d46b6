/** The work sheet of where a tie rod end, or the upper arm's pivots, may go. */
import './whereSheet.css';
import { useEffect } from 'react';
import { where } from '../../state/whereabouts.ts';
import { CautionLine } from '../CautionLine.tsx';
import { Bests, OnTrial } from './Bests.tsx';
import { Choices } from './Choices.tsx';
import { PlacePicture } from './PlacePicture.tsx';
import { Told } from './Told.tsx';
import { Wishes } from './Wishes.tsx';

export default function WhereSheet() {
  useEffect(() => where.watch(), []);
  return (
    <div className="where">
      <Choices />
      <OnTrial />
      <PlacePicture />
      <Told />
      <Bests />
      <Wishes />
      <p className="where-note">
        All at rack 0 but for Ackermann and the gap. Static toe and camber stay as measured: the tie
        rod is made as long as the place asks. Limits and reaches to begin with are common practice,
        no source. Check thread engagement, joint angles and the strength of brackets before metal
        is cut.
      </p>
      <CautionLine />
    </div>
  );
}
