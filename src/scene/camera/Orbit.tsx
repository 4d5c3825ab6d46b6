/** Orbiting, panning and zooming by hand. */
import { OrbitControls } from '@react-three/drei/core/OrbitControls';
import type { Ref } from 'react';
import { MOUSE, TOUCH, type Vector3 } from 'three';
import type { OrbitControls as Controls } from 'three-stdlib';

const MOUSE_BUTTONS = { LEFT: MOUSE.ROTATE, MIDDLE: MOUSE.PAN, RIGHT: MOUSE.PAN };
const TOUCHES = { ONE: TOUCH.ROTATE, TWO: TOUCH.DOLLY_PAN };

interface Props {
  readonly controls: Ref<Controls>;
  /** Where they begin to look. */
  readonly target: Vector3;
  readonly onStart: () => void;
  readonly onChange: () => void;
  readonly onEnd: () => void;
}

export function Orbit({ controls, target, onStart, onChange, onEnd }: Props) {
  return (
    <OrbitControls
      ref={controls}
      enableDamping={false}
      target={target}
      rotateSpeed={0.9}
      zoomSpeed={0.9}
      mouseButtons={MOUSE_BUTTONS}
      touches={TOUCHES}
      onStart={onStart}
      onChange={onChange}
      onEnd={onEnd}
    />
  );
}
