/** The folders of the points drawer: which parts of a model each shows. */
import type { Model } from '../../../solver/index.ts';
import type { Field } from './field.ts';
import { fieldsOf } from './fields.ts';

export interface Section {
  readonly key: string;
  readonly title: string;
  /** First keys of the paths shown here. */
  readonly parts: readonly string[];
  /** A word on what belongs together, where it is not plain. */
  readonly note?: string;
}

export const SECTIONS: readonly Section[] = [
  { key: 'lowerArm', title: 'Lower arm', parts: ['lowerArm'] },
  { key: 'upperArm', title: 'Upper arm', parts: ['upperArm'] },
  { key: 'tieRod', title: 'Tie rod', parts: ['tieRod'] },
  { key: 'steering', title: 'Steering', parts: ['steering'] },
  { key: 'hub', title: 'Hub and wheel', parts: ['hub', 'wheel', 'brake'] },
  {
    key: 'tyre',
    title: 'Tyre',
    parts: ['tyre'],
    note: 'A size for another rim changes the rim with it. The loaded radius keeps its share of the tyre’s.',
  },
  { key: 'coilover', title: 'Coilover', parts: ['coilover'] },
  { key: 'antiRollBar', title: 'Anti-roll bar', parts: ['antiRollBar'] },
  { key: 'halfShaft', title: 'Half-shaft', parts: ['halfShaft'] },
  { key: 'strap', title: 'Limit strap', parts: ['strap'] },
  { key: 'knuckle', title: 'Knuckle', parts: ['knuckle'] },
  { key: 'travel', title: 'Travel and stops', parts: ['travel', 'stops'] },
  { key: 'obstacles', title: 'Obstacles', parts: ['obstacles'] },
  {
    key: 'limits',
    title: 'Clearances and targets',
    parts: ['required', 'tolerance', 'targets'],
  },
  { key: 'vehicle', title: 'Vehicle', parts: ['vehicle'] },
];

/** The fields of one section in a model. */
export function sectionFields(section: Section, model: Model): readonly Field[] {
  return fieldsOf(model).filter(({ path }) => section.parts.includes(path.split('.', 1)[0] ?? ''));
}

/** Equal for two models when a section has the same fields in both: only then can the one's panel show the other. */
export function sectionShape(section: Section, model: Model): string {
  return sectionFields(section, model)
    .map(({ path, label }) => `${path}:${label}`)
    .join('\n');
}
