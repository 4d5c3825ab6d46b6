/** The hard point whose name is looked at in the points panel, marked where its body carries it now. */
import type { Corner } from '../../../solver/index.ts';
import { meshes } from '../../state/meshes.ts';
import { hardPoints } from '../../state/points.ts';
import { type Carried, carry, placeNow } from '../handles/carried.ts';
import type { Words } from '../labels/labels.ts';
import { mark } from './pen.ts';
import type { Drawing } from './subject.ts';

const PREFIX = 'point:';
const SIZE = 24;

/** The point last looked at, made ready once per key and corner. */
const _looked = {
  key: '',
  of: null as Corner | null,
  carried: null as Carried | null,
  words: ((): string => '') as Words,
};
const _place = new Float64Array(3);

function look(corner: Corner): Carried | null {
  if (_looked.of === corner) return _looked.carried;
  _looked.of = corner;
  const path = _looked.key.slice(PREFIX.length);
  const point = hardPoints(corner.model).find((one) => one.path === path);
  _looked.carried = point === undefined ? null : carry(corner, point, meshes.getState());
  const label = point?.label ?? '';
  if (_looked.words(0, 'mm') !== label) _looked.words = () => label;
  return _looked.carried;
}

const drawPoint: Drawing = (pen, { now }) => {
  const carried = look(now.corner);
  if (carried === null) return;
  placeNow(carried, now.pose, _place);
  mark(pen, _place[0]!, _place[1]!, _place[2]!, SIZE, 'accent');
  pen.label(_place[0]!, _place[1]!, _place[2]!, 'accent', _looked.words, 0);
};

/** The drawing of a key "point:" and a point's path; null for any other key. */
export function pointDrawing(key: string): Drawing | null {
  if (!key.startsWith(PREFIX)) return null;
  if (_looked.key !== key) {
    _looked.key = key;
    _looked.of = null;
  }
  return drawPoint;
}
