/** The work sheet of alignment: the hardware as dials, what is wanted, the settings that reach it, and what can be reached. */
import './alignSheet.css';
import { Hardware } from './Hardware.tsx';
import { Numbers } from './Numbers.tsx';
import { Targets } from './Targets.tsx';

export default function AlignSheet() {
  return (
    <div className="align">
      <Numbers />
      <p className="align-note">At ride height and straight ahead, wherever the bench stands.</p>
      <Hardware />
      <section className="align-find">
        <h3>What is wanted</h3>
        <Targets />
      </section>
    </div>
  );
}
