/** The work sheet that looks for better points: what may move, what is wanted, what must hold, and the answers. */
import './improve.css';
import { AnswerList } from './AnswerList.tsx';
import { HoldList } from './HoldList.tsx';
import { MoverList } from './MoverList.tsx';
import { Starters } from './Starters.tsx';
import { useDesign } from './useDesign.ts';
import { WishList } from './WishList.tsx';

export default function ImproveSheet() {
  const design = useDesign();
  return (
    <div className="improve">
      <Starters design={design} />
      <MoverList model={design.model} />
      <WishList design={design} />
      <HoldList design={design} />
      <AnswerList design={design} />
      <p className="plan-note">
        Mock an answer up before any metal is cut: check it by hand at both locks, full bump and
        full droop. The strength of brackets, arms and welds is not checked.
      </p>
    </div>
  );
}
