/** What can be edited of a model: numbers side by side, a text, or a choice of a few. */
import type { Model } from '../../../solver/index.ts';
import type { RowSpec } from './spec.ts';

interface FieldBase {
  readonly path: string;
  readonly label: string;
}

/** One to three numbers that stand side by side. */
export interface NumbersField extends FieldBase {
  readonly form: 'numbers';
  readonly row: RowSpec;
  /** Whether it is a point of the corner, to be lit in the scene. */
  readonly isPoint: boolean;
  readonly get: (model: Model) => readonly number[];
  readonly set: (model: Model, numbers: readonly number[]) => Model;
}

export interface TextField extends FieldBase {
  readonly form: 'text';
  readonly get: (model: Model) => string;
  readonly set: (model: Model, text: string) => Model;
}

export interface ChoiceField extends FieldBase {
  readonly form: 'choice';
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly get: (model: Model) => string;
  readonly set: (model: Model, value: string) => Model;
}

export type Field = NumbersField | TextField | ChoiceField;
