/** What is wanted of camber, caster and toe, with what may be off it: typed here, kept in the model. */
import { useStore } from 'zustand';
import { measureRow, type Target } from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { enteredNumber } from '../../words/entry.ts';
import { fixed } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { withoutValue, withValue } from '../points/place.ts';
import { Entry } from './Entry.tsx';
import { ANGLES, type AngleKey } from './setPose.ts';
import { withTarget } from './targets.ts';

function takeValue(key: AngleKey, text: string): string | null {
  if (text.trim() === '') return editModel((model) => withoutValue(model, `targets.${key}`));
  const entered = enteredNumber(text);
  if (!entered.ok) return entered.why;
  return editModel((model) => withTarget(model, key, entered.value), `targets.${key}.value`);
}

function takePlusMinus(key: AngleKey, text: string): string | null {
  const entered = enteredNumber(text.replace(/^\s*±/, ''));
  if (!entered.ok) return entered.why;
  const path = `targets.${key}.plusMinus`;
  return editModel((model) => withValue(model, path, entered.value), path);
}

/** As many digits as were stated, and two at least. */
function shownText(value: number): string {
  const digits = String(value).split('.')[1]?.length ?? 0;
  return fixed(value, Math.min(4, Math.max(2, digits)));
}

function Row({ name, target }: { readonly name: AngleKey; readonly target: Target | undefined }) {
  const { label, sense } = measureRow(name);
  const positive = sense?.positive.replace(/ ?\{\} ?/, ' ').trim();
  return (
    <div className="align-wanted">
      <Entry
        label={label}
        name={`Wanted ${label}, degrees`}
        hint={`Positive: ${positive}. Left empty it stays as it is`}
        placeholder="as it is"
        shown={target === undefined ? '' : shownText(target.value)}
        unit="°"
        take={(text) => takeValue(name, text)}
      />
      {target !== undefined && (
        <Entry
          label="±"
          name={`What may be off ${label}, degrees`}
          shown={shownText(target.plusMinus)}
          unit="°"
          take={(text) => takePlusMinus(name, text)}
        />
      )}
    </div>
  );
}

export function Targets() {
  const targets = useStore(documentStore, (state) => state.model.targets);
  return (
    <div className="align-wanteds">
      {ANGLES.map((name) => (
        <Row key={name} name={name} target={targets?.[name]} />
      ))}
    </div>
  );
}
