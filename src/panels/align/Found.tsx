/** The settings that reach what is wanted, as an order of work, and the way to try and keep them. */
import { useStore } from 'zustand';
import {
  type Alignment,
  hardwareWords,
  type Model,
  presentSettings,
  type Setting,
  type Settings,
  stepWords,
  type WorkStep,
} from '../../../solver/index.ts';
import { alignment } from '../../state/aligned.ts';
import { documentStore, view } from '../../state/bench.ts';
import { angle, gapUnit, length } from '../../words/format.ts';
import { Effects } from './Effects.tsx';
import { ANGLES } from './setPose.ts';
import { Verdict } from './Verdict.tsx';

function Work({ found }: { readonly found: Alignment }) {
  const unit = useStore(view, (state) => gapUnit(state.unit));
  const words = (step: WorkStep): string =>
    stepWords(step, (mm) => length(mm, unit, 2)).replace(/-(?=\d)/g, '−');
  return (
    <ol className="align-work">
      {found.work.map((step) => (
        <li key={step.at} data-step={step.at}>
          <strong>{hardwareWords(step.at)}</strong>: {words(step)}
        </li>
      ))}
      <li>
        <strong>the other side</strong>: the same, mirrored; outboard stays outboard. Toe last on
        both.
      </li>
    </ol>
  );
}

function Gives({ name, setting }: { readonly name: string; readonly setting: Setting }) {
  const { angles, isWithin } = setting;
  return (
    <tr>
      <th scope="row">{name}</th>
      {ANGLES.map((key) => (
        <td key={key}>{angles === null ? '–' : angle(angles[key])}</td>
      ))}
      <td>{isWithin === null ? '' : isWithin ? '✓ within' : '✗ outside'}</td>
    </tr>
  );
}

/** What is set now, what the settings give, and what they give in whole marks. */
function Table({ found }: { readonly found: Alignment }) {
  return (
    <table className="align-table">
      <thead>
        <tr>
          <td />
          {ANGLES.map((key) => (
            <th key={key} scope="col">
              {key}
            </th>
          ))}
          <th scope="col">±</th>
        </tr>
      </thead>
      <tbody>
        <Gives name="before" setting={found.before} />
        <Gives name="exact" setting={found.after} />
        {found.rounded !== null && <Gives name="whole marks" setting={found.rounded} />}
      </tbody>
    </table>
  );
}

/** Whether the bench is set as these settings say. */
function isSetSo(model: Model, settings: Settings): boolean {
  const now = presentSettings(model) as Readonly<Record<string, number>>;
  return Object.entries(settings).every(([name, set]) => Math.abs((now[name] ?? 0) - set) < 1e-9);
}

function Buttons() {
  const trial = useStore(alignment.trials, (state) => state.trial);
  const settings = useStore(alignment, alignment.chosenOf);
  const isSet = useStore(
    documentStore,
    ({ model }) => settings !== null && isSetSo(model, settings),
  );
  return (
    <div className="align-buttons">
      {isSet && trial === null && <p className="align-note">The bench is set so.</p>}
      {!isSet && trial?.subject !== settings && (
        <button
          type="button"
          className="bar-button"
          title="Put them on the bench and hold the present design as the ghost"
          onClick={alignment.tryOn}
        >
          Try as ghost
        </button>
      )}
      {trial === null ? (
        <button type="button" className="bar-button" onClick={alignment.putAway}>
          Put away
        </button>
      ) : (
        <>
          <button type="button" className="bar-button" onClick={alignment.trials.keep}>
            Keep {trial.subject === settings ? 'these settings' : 'what is on the bench'}
          </button>
          <button type="button" className="bar-button" onClick={alignment.trials.takeBack}>
            Take back
          </button>
        </>
      )}
    </div>
  );
}

/** In whole marks, or as exact as found. */
function WholeSwitch() {
  const isWhole = useStore(alignment, (state) => state.isWhole);
  return (
    <label className="align-switch">
      <input
        type="checkbox"
        checked={isWhole}
        onChange={(event) => alignment.takeWhole(event.target.checked)}
      />
      In whole marks, shims and flats
    </label>
  );
}

function turnsCam({ at, from, to }: WorkStep): boolean {
  return at.endsWith('Cam') && from !== to;
}

export function Found() {
  const found = useStore(alignment, (state) => state.settings);
  const isPending = useStore(alignment, (state) => state.pending.has('settings'));
  if (found === null) return <p className="align-note">Looking for settings…</p>;
  return (
    <section className="align-found" aria-label="Settings found" aria-busy={isPending}>
      <Verdict found={found} />
      {found.rounded !== null && <WholeSwitch />}
      {found.work.length > 0 && (
        <>
          {found.work.some(turnsCam) && (
            <p className="align-note">
              One wrench holds the nut, just loose; the other turns the head with the cam. Hold it
              while the nut is tightened.
            </p>
          )}
          <Work found={found} />
        </>
      )}
      <Table found={found} />
      {found.work.length > 0 && <Buttons />}
      {found.work.length > 0 && <Effects />}
    </section>
  );
}
