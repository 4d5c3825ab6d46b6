/** The name of the room a model states for its brake, where wheel and tyre are ghosted or cut and it is seen. */
import { Slot } from '../../../solver/index.ts';
import type { Words } from '../labels/labels.ts';
import type { Drawing } from './subject.ts';

const WORDS: Words = () => 'room for the brake';

/** Said at the envelope's greatest radius, straight up. */
export const drawEnvelopeName: Drawing = (pen, { now }) => {
  const section = now.corner.model.brake?.section;
  if (section === undefined) return;
  let s = 0;
  let radius = 0;
  for (let i = 0; i < section.length; i += 1) {
    const point = section[i]!;
    if (point[1] <= radius) continue;
    s = point[0];
    radius = point[1];
  }
  const { data } = now.pose;
  const at = (i: number): number =>
    data[Slot.centre + i]! + s * data[Slot.hubAxis + i]! + radius * data[Slot.wheelUp + i]!;
  pen.label(at(0), at(1), at(2), 'soft', WORDS, 0);
};
