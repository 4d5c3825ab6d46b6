/** The close-up's frame over the canvas: its border, its words, and the button that puts it away. */
import './closeUp.css';
import type { Insets } from '../../state/view.ts';

export interface CloseUpFrame {
  /** CSS pixels in the canvas. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  show(): void;
  leave(): void;
  /** Puts the frame into the corner of what the panels leave free. */
  place(insets: Insets, windowHeight: number): void;
  say(words: string): void;
}

const MARGIN = 12;

export function createCloseUpFrame(stage: HTMLElement, onClose: () => void): CloseUpFrame {
  const root = stage.ownerDocument.createElement('div');
  root.className = 'close-up';
  root.dataset['closeUp'] = '';
  const words = stage.ownerDocument.createElement('p');
  const close = stage.ownerDocument.createElement('button');
  close.type = 'button';
  close.textContent = '×';
  close.setAttribute('aria-label', 'Put the close-up away');
  close.addEventListener('click', onClose);
  root.append(words, close);
  let shown: Insets | null = null;
  const frame = {
    left: 0,
    top: 0,
    width: 240,
    height: 190,
    show: () => stage.append(root),
    leave: () => root.remove(),
    place(insets: Insets, windowHeight: number) {
      if (insets === shown) return;
      shown = insets;
      const free = windowHeight - insets.top - insets.bottom;
      frame.width = free < 420 ? 150 : 240;
      frame.height = free < 420 ? 120 : 190;
      frame.left = insets.left + MARGIN;
      frame.top = insets.top + MARGIN;
      root.style.transform = `translate(${frame.left}px, ${frame.top}px)`;
      root.style.width = `${frame.width}px`;
      root.style.height = `${frame.height}px`;
    },
    say(text: string) {
      if (words.textContent !== text) words.textContent = text;
    },
  };
  return frame;
}
