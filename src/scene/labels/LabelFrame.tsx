/** Opens the labels' frame before the drawings write into it, and closes it after them. */
import { useFrame } from '@react-three/fiber';
import { view } from '../../state/bench.ts';
import { countRender } from '../renders.ts';
import type { Surroundings } from '../surroundings.ts';

interface Props {
  readonly stage: Surroundings;
}

export function LabelFrame({ stage }: Props) {
  countRender();
  const { labels } = stage;
  useFrame(({ camera, size }) => {
    const { unit, insets } = view.getState();
    labels.begin(camera, size.width, size.height, unit);
    labels.keepInside(
      insets.left,
      insets.top,
      size.width - insets.right,
      size.height - insets.bottom,
    );
  }, -0.4);
  useFrame(() => labels.end(), -0.1);
  return null;
}
