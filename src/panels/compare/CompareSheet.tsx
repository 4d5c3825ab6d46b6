/** The work sheet that compares up to four designs: their list, their curves over each other, every measure side by side. */
import './compare.css';
import { measureRow } from '../../../solver/index.ts';
import { LateCurve } from '../../charts/LateCurve.tsx';
import { openCurves } from '../../state/charted.ts';
import { MAIN_KEYS } from '../readings.ts';
import { CompareTable } from './CompareTable.tsx';
import { useColumns } from './columns.ts';
import { DesignList } from './DesignList.tsx';

function Curves() {
  return (
    <section className="compare-curves" aria-labelledby="compare-curves">
      <h3 id="compare-curves">
        Curves over travel, at the present rack
        <button type="button" className="bar-button" onClick={() => openCurves()}>
          Any measure, large
        </button>
      </h3>
      {MAIN_KEYS.map((key) => (
        <figure key={key}>
          <figcaption>{measureRow(key).label}</figcaption>
          <LateCurve measure={key} height={76} />
        </figure>
      ))}
    </section>
  );
}

export default function CompareSheet() {
  const columns = useColumns();
  return (
    <div className="compare">
      <DesignList />
      <Curves />
      <CompareTable {...columns} />
      <p className="compare-note">
        Ends of travel and locks are those of each design. Rigid parts, no tyre deflection: measure
        again on the vehicle before cutting, and check every gap by hand.
      </p>
    </div>
  );
}
