/** The readings: camber, caster and toe large, everything else in groups that open. */
import './readings.css';
import { lazy, Suspense, useSyncExternalStore } from 'react';
import { measureRow } from '../../solver/index.ts';
import { LateBandWords, LateCurve } from '../charts/LateCurve.tsx';
import { Icon } from './icons.tsx';
import { openGroups } from './openGroups.ts';
import { MainReading, RowReading, useBaselineWords } from './Reading.tsx';
import { MAIN_KEYS, READING_GROUPS, type ReadingGroup } from './readings.ts';

const BumpSaid = lazy(() => import('./trust/BumpSaid.tsx'));

function Group({ name, title, rows, caution }: ReadingGroup) {
  const open = useSyncExternalStore(openGroups.subscribe, openGroups.names);
  const isOpen = open.includes(name);
  return (
    <section className="reading-group" data-group={name}>
      <h3 className="reading-group-title">
        <button
          type="button"
          className="reading-group-button"
          aria-expanded={isOpen}
          aria-controls={`group-${name}`}
          onClick={() => openGroups.toggle(name)}
        >
          <Icon name="down" />
          {title}
        </button>
      </h3>
      <div id={`group-${name}`} hidden={!isOpen}>
        {isOpen && rows.map((row) => <RowReading key={row.key} row={row} />)}
        {isOpen && caution !== undefined && (
          <p className="reading-group-caution">
            {caution}
            {name === 'bump' && (
              <Suspense fallback={null}>
                <BumpSaid />
              </Suspense>
            )}
          </p>
        )}
      </div>
    </section>
  );
}

export function Readings() {
  const baseline = useBaselineWords();
  return (
    <section className="readings" data-panel="readings" aria-labelledby="readings-title">
      <h2 id="readings-title" className="hidden-text">
        Readings of the left front wheel
      </h2>
      <div className="readings-scroll">
        {MAIN_KEYS.map((key) => (
          <MainReading key={key} row={measureRow(key)}>
            <LateCurve measure={key} height={70} />
          </MainReading>
        ))}
        <p className="readings-baseline">
          Changes {baseline}
          <LateBandWords />
        </p>
        {READING_GROUPS.map((group) => (
          <Group key={group.name} {...group} />
        ))}
      </div>
    </section>
  );
}
