/** The work sheet of alignment: the hardware as dials, what is wanted, the settings that reach it, and what can be reached. */
import './alignSheet.css';
import { useEffect } from 'react';
import { alignment } from '../../state/aligned.ts';
import { Caster } from './Caster.tsx';
import { Cautions } from './Cautions.tsx';
import { Find } from './Find.tsx';
import { Hardware } from './Hardware.tsx';
import { Numbers } from './Numbers.tsx';

export default function AlignSheet() {
  useEffect(() => alignment.watch(), []);
  return (
    <div className="align">
      <Numbers />
      <p className="align-note">
        At ride height and straight ahead, wherever the bench stands. Turn a dial by hand, or with
        arrow keys and mouse wheel once it is chosen; Alt lets it stand between marks.
      </p>
      <Hardware />
      <Find />
      <Caster />
      <Cautions />
    </div>
  );
}
