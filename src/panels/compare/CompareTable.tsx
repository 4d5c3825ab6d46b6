/** The table: every measure of a station, a column a design, what differs in words. */
import { Fragment } from 'react';
import { useStore } from 'zustand';
import {
  comparisonCsv,
  GROUP_TITLES,
  STATION_LABELS,
  STATIONS,
  type Station,
  unreachedWords,
} from '../../../solver/index.ts';
import { MarkIcon } from '../../charts/MarkKey.tsx';
import { saveText } from '../../files/save.ts';
import { inputs, view } from '../../state/bench.ts';
import { type ColumnKey, comparison } from '../../state/comparison.ts';
import { Icon } from '../icons.tsx';
import { type ShownRow, shownRows } from './cells.ts';
import { type Columns, fileName } from './columns.ts';

/** Moves the bench to where the present design stands at a station. */
function goTo({ columns }: Columns, station: Station): void {
  const place = columns[0]!.measured.stations[station].place;
  inputs.play(null);
  if (place !== null) inputs.move(place.travel, place.rack);
}

function StationChoice({ columns }: { readonly columns: Columns }) {
  const station = useStore(comparison, (state) => state.station);
  return (
    <fieldset className="compare-stations">
      <legend className="hidden-text">Where they are compared</legend>
      {STATIONS.map((each) => (
        <label key={each} data-chosen={each === station || undefined}>
          <input
            type="radio"
            name="compare-station"
            checked={each === station}
            onChange={() => comparison.setState({ station: each })}
          />
          {STATION_LABELS[each]}
        </label>
      ))}
      <button type="button" className="bar-button" onClick={() => goTo(columns, station)}>
        Put the bench there
      </button>
    </fieldset>
  );
}

function Options({ columns, base }: Columns) {
  const isDiffering = useStore(comparison, (state) => state.isDiffering);
  function save(): void {
    const named = columns.map((column) => ({ name: fileName(column), measured: column.measured }));
    saveText(comparisonCsv(named, base), 'comparison.csv', 'text/csv');
  }
  return (
    <div className="compare-options">
      <label>
        <span>Differences from</span>
        <select
          value={columns[base]!.key}
          onChange={({ target }) => comparison.setState({ base: target.value as ColumnKey })}
        >
          {columns.map(({ key, mark, name }) => (
            <option key={key} value={key}>
              {mark.letter}: {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        <input
          type="checkbox"
          checked={isDiffering}
          onChange={() => comparison.setState({ isDiffering: !isDiffering })}
        />
        only what differs
      </label>
      <button type="button" className="bar-button" onClick={save}>
        Save as CSV
      </button>
    </div>
  );
}

function Row({ shown, columns, base }: Columns & { readonly shown: ShownRow }) {
  const { row, cells, isSame } = shown;
  return (
    <tr data-row={row.key} data-same={isSame || undefined}>
      <th scope="row">{row.label}</th>
      {cells.map(({ text, words, isAbsent }, at) => (
        <td
          key={columns[at]!.key}
          data-column={columns[at]!.key}
          data-absent={isAbsent || undefined}
          data-base={at === base || undefined}
        >
          <b>{text}</b>
          {words !== '' && <small>{words}</small>}
        </td>
      ))}
    </tr>
  );
}

function Unreached({ columns }: { readonly columns: Columns['columns'] }) {
  const station = useStore(comparison, (state) => state.station);
  const notes = columns.flatMap(({ key, mark, measured }) => {
    const words = unreachedWords(measured, station);
    return words === null ? [] : [{ key, text: `${mark.letter} ${words}` }];
  });
  return notes.map(({ key, text }) => (
    <p key={key} className="compare-unreached">
      <Icon name="warn" />
      {text}
    </p>
  ));
}

export function CompareTable({ columns, base }: Columns) {
  const { station, isDiffering } = useStore(comparison);
  const unit = useStore(view, (state) => state.unit);
  const all = shownRows({ columns, base }, station, unit);
  const rows = isDiffering ? all.filter(({ isSame }) => !isSame) : all;
  return (
    <section className="compare-numbers" aria-labelledby="compare-numbers">
      <h3 id="compare-numbers">Numbers</h3>
      <Options columns={columns} base={base} />
      <StationChoice columns={{ columns, base }} />
      <Unreached columns={columns} />
      <table className="compare-table" data-columns={columns.length}>
        <thead>
          <tr>
            <td />
            {columns.map(({ key, mark, name }, at) => (
              <th key={key} scope="col">
                <MarkIcon mark={mark} />
                <span title={name}>{name}</span>
                {at === base && columns.length > 1 && <small>base</small>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((shown, at) => (
            <Fragment key={shown.row.key}>
              {shown.row.group !== rows[at - 1]?.row.group && (
                <tr className="compare-group">
                  <th scope="rowgroup" colSpan={columns.length + 1}>
                    {GROUP_TITLES[shown.row.group]}
                  </th>
                </tr>
              )}
              <Row shown={shown} columns={columns} base={base} />
            </Fragment>
          ))}
        </tbody>
      </table>
      {rows.length === 0 && <p>Nothing differs here.</p>}
    </section>
  );
}
