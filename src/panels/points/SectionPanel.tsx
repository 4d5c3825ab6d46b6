/** The leva panel of one section. The model is shown in it, one way: leva's store is written from the document, never read. */
import { LevaPanel, useControls, useCreateStore } from 'leva';
import { useEffect, useState } from 'react';
import type { Model } from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { onFrame } from '../../state/frame.ts';
import type { Field } from './field.ts';
import { numbersInput } from './NumbersInput.tsx';
import { type Section, sectionFields, sectionShape } from './sections.ts';
import { choiceInput, textInput } from './TextInput.tsx';
import { levaTheme } from './theme.ts';

/** Leva parts paths at dots into folders of its own, whose titles no keyboard reaches: here a section is the folder. */
function keyOf(field: Field): string {
  return field.path.replaceAll('.', '/');
}

const gesture = {
  onEditStart: () => documentStore.beginGesture(),
  onEditEnd: () => documentStore.endGesture(),
  // With a listener leva does not render the section for every value.
  onChange: () => undefined,
};

function inputOf(field: Field, model: Model, section: string) {
  const shared = { label: field.label, ...gesture };
  switch (field.form) {
    case 'numbers':
      return { ...shared, ...numbersInput({ numbers: field.get(model), field, section }) };
    case 'text':
      return { ...shared, ...textInput({ text: field.get(model), field, section }) };
    case 'choice':
      return { ...shared, ...choiceInput({ text: field.get(model), field, section }) };
  }
}

function isEqual(one: unknown, other: unknown): boolean {
  if (!Array.isArray(one) || !Array.isArray(other)) return one === other;
  return one.length === other.length && one.every((item, i) => item === other[i]);
}

/** Shows the fields a section had when it was made; its key must change when they do. */
export function SectionPanel({ section }: { readonly section: Section }) {
  const store = useCreateStore();
  const [{ fields, shape, first }] = useState(() => {
    const { model } = documentStore.getState();
    return {
      fields: sectionFields(section, model),
      shape: sectionShape(section, model),
      first: model,
    };
  });
  useControls(
    () =>
      Object.fromEntries(
        fields.map((field) => [keyOf(field), inputOf(field, first, section.title)]),
      ),
    { store },
    [],
  );
  useEffect(() => {
    let shown: Model | null = null;
    const follow = (): void => {
      const { model } = documentStore.getState();
      // A model of another shape has a panel of its own coming.
      if (model === shown || sectionShape(section, model) !== shape) return;
      shown = model;
      const changed = fields.flatMap((field): [string, unknown][] => {
        const value = field.get(model);
        return isEqual(store.get(keyOf(field)), value) ? [] : [[keyOf(field), value]];
      });
      if (changed.length > 0) store.set(Object.fromEntries(changed), false);
    };
    return onFrame(follow);
  }, [store, section, fields, shape]);
  // A slider that goes away while it is held lets go.
  useEffect(() => () => documentStore.endGesture(), []);
  return <LevaPanel store={store} theme={levaTheme} fill flat titleBar={false} hideCopyButton />;
}
