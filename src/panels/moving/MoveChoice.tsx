/** What is moved, how far and which way, as one sentence to fill in. */
import { useStore } from 'zustand';
import { type Model, type Movable, movableLengths, movablePoints } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { choosePoint, moving } from '../../state/moving.ts';
import { GROUP_LABELS, hardPoints, type PointGroup } from '../../state/points.ts';
import { gapUnit } from '../../words/format.ts';
import { LengthField } from '../LengthField.tsx';
import { ARM_LABELS, wayOf, waysOf } from './words.ts';

function keyOf(what: Movable): string {
  return what.kind === 'arm' ? `length:${what.arm}` : what.path;
}

function isLength(key: string): boolean {
  return movableLengths(documentStore.getState().model).some(({ path }) => path === key);
}

/** Another thing keeps the way, where it has that way. */
function choose(key: string): void {
  const { by } = moving.getState();
  const arm =
    key === 'length:lowerArm' ? 'lowerArm' : key === 'length:upperArm' ? 'upperArm' : null;
  if (arm !== null) moving.setState({ what: { kind: 'arm', arm }, by: Math.abs(by) });
  else if (isLength(key))
    moving.setState({ what: { kind: 'length', path: key }, by: Math.abs(by) });
  else choosePoint(key);
}

function chooseWay(key: string): void {
  const { what, by } = moving.getState();
  const way = waysOf(what).find((one) => one.key === key);
  if (way === undefined) return;
  moving.setState({
    what: what.kind === 'point' ? { ...what, axis: way.axis } : what,
    by: way.sense * Math.abs(by),
  });
}

function Points({ model }: { readonly model: Model }) {
  const movable = new Set(movablePoints(model));
  const points = hardPoints(model).filter(({ path }) => movable.has(path));
  const groups = (Object.keys(GROUP_LABELS) as PointGroup[]).filter((group) =>
    points.some((point) => point.group === group),
  );
  return groups.map((group) => (
    <optgroup key={group} label={GROUP_LABELS[group]}>
      {(group === 'lowerArm' || group === 'upperArm') && (
        <option value={`length:${group}`}>{ARM_LABELS[group]}, its length</option>
      )}
      {points
        .filter((point) => point.group === group)
        .map(({ path, label }) => (
          <option key={path} value={path}>
            {label}
          </option>
        ))}
    </optgroup>
  ));
}

interface MoveChoiceProps {
  readonly model: Model;
  readonly what: Movable;
  readonly by: number;
}

export function MoveChoice({ model, what, by }: MoveChoiceProps) {
  const unit = useStore(view, (state) => gapUnit(state.unit));
  const ways = waysOf(what);
  const light = (isLit: boolean): void => {
    const path = what.kind === 'arm' ? `${what.arm}.ballJoint` : what.path;
    view.light(isLit && what.kind !== 'length' ? `point:${path}` : null);
  };
  return (
    <fieldset
      className="moving-choice"
      onPointerEnter={() => light(true)}
      onPointerLeave={() => light(false)}
      onFocus={() => light(true)}
      onBlur={() => light(false)}
    >
      <legend className="hidden-text">What is moved, how far and which way</legend>
      <label>
        Move{' '}
        <select
          aria-label="What is moved"
          value={keyOf(what)}
          onChange={(event) => choose(event.target.value)}
        >
          <Points model={model} />
          <optgroup label="Lengths">
            {movableLengths(model).map(({ path, label }) => (
              <option key={path} value={path}>
                {label}
              </option>
            ))}
          </optgroup>
        </select>
      </label>
      <span className="moving-by">
        <LengthField
          label="by"
          value={Math.abs(by)}
          unit={unit}
          onTake={(mm) => moving.setState({ by: by < 0 ? -mm : mm })}
        />
        <select
          aria-label="Which way"
          value={wayOf(what, by).key}
          onChange={(event) => chooseWay(event.target.value)}
        >
          {ways.map(({ key, words }) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </span>
    </fieldset>
  );
}
