/** What the stage tells the page about itself, only when it rests: for tests and for people who look under the bonnet. */
import { type Camera, Vector3 } from 'three';
import { Slot } from '../../solver/index.ts';
import { inputs, posed } from '../state/bench.ts';
import { settleFirstPicture } from '../state/firstPicture.ts';
import { flatToThree } from './axes.ts';
import { renderCount } from './renders.ts';

export interface Report {
  /** A frame was drawn. */
  frame(): void;
  /** Writes the attributes: frames, renders, travel and rack unrounded, the wheel centre's place in the window, and that it rests. */
  atRest(camera: Camera): void;
}

const _place = new Vector3();

export function createReport(element: HTMLElement): Report {
  let frames = 0;
  return {
    frame() {
      frames += 1;
      if (element.dataset['resting'] !== undefined) delete element.dataset['resting'];
      if (frames > 1) return;
      document.documentElement.dataset['firstPicture'] = '1';
      settleFirstPicture();
    },
    atRest(camera) {
      const { travel, rack } = inputs.getState();
      const { left, top, width, height } = element.getBoundingClientRect();
      flatToThree(posed.current().pose.data, Slot.centre, _place).project(camera);
      const x = left + ((_place.x + 1) / 2) * width;
      const y = top + ((1 - _place.y) / 2) * height;
      const { dataset } = element;
      dataset['resting'] = '';
      dataset['frames'] = String(frames);
      dataset['renders'] = String(renderCount());
      dataset['travel'] = String(travel);
      dataset['rack'] = String(rack);
      dataset['wheel'] = `${x.toFixed(1)},${y.toFixed(1)}`;
    },
  };
}
