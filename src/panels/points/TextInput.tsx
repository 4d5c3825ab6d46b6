/** Leva inputs of a text, which stays as typed until it is taken, and of a choice of a few. */
import { createPlugin, useInputContext } from 'leva/plugin';
import { useId, useState } from 'react';
import { editModel } from './edit.ts';
import type { ChoiceField, TextField } from './field.ts';
import { Refused } from './Refused.tsx';
import { useEntry } from './useEntry.ts';

interface Settings<F> {
  readonly field: F;
  readonly section: string;
}

interface Context<F> {
  readonly value: string;
  readonly settings: Settings<F>;
  readonly onUpdate: (value: string) => void;
}

/** Hands a text to the model and answers why it was refused; the panel's own copy follows what was taken. */
function useTaking(context: Context<TextField | ChoiceField>): (text: string) => string | null {
  const { settings, onUpdate } = context;
  return (text) => {
    const refusal = editModel((model) => settings.field.set(model, text), settings.field.path);
    if (refusal === null) onUpdate(text);
    return refusal;
  };
}

function TextInput() {
  const context = useInputContext() as unknown as Context<TextField>;
  const { field, section } = context.settings;
  const taking = useTaking(context);
  const id = useId();
  const { input, refusal, refusalId } = useEntry(context.value, (text) => taking(text.trim()));
  return (
    <div className="points-row points-single">
      <label htmlFor={id}>{field.label}</label>
      <input
        {...input}
        id={id}
        className="points-text"
        spellCheck={false}
        aria-label={`${section}: ${field.label}`}
      />
      <Refused id={refusalId} message={refusal} />
    </div>
  );
}

function ChoiceInput() {
  const context = useInputContext() as unknown as Context<ChoiceField>;
  const { field, section } = context.settings;
  const [message, setMessage] = useState<string | null>(null);
  const taking = useTaking(context);
  const id = useId();
  return (
    <div className="points-row points-single">
      <label htmlFor={id}>{field.label}</label>
      <select
        id={id}
        className="points-text"
        aria-label={`${section}: ${field.label}`}
        value={context.value}
        onChange={(event) => setMessage(taking(event.target.value))}
      >
        {field.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
      <Refused message={message} />
    </div>
  );
}

/** What leva is given: not under the name `value`, which it would take for the whole input. */
function normalize<F>({ text, ...settings }: Settings<F> & { readonly text: string }) {
  return { value: text, settings };
}

export const textInput = createPlugin({ component: TextInput, normalize: normalize<TextField> });
export const choiceInput = createPlugin({
  component: ChoiceInput,
  normalize: normalize<ChoiceField>,
});
