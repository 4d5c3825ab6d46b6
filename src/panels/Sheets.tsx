/** Sheets over the bench: its keys, its cautions, and wheel and tyre. */
import './sheets.css';
import { lazy, type ReactNode } from 'react';
import { useStore } from 'zustand';
import { useModal } from '../state/useModal.ts';
import { Icon } from './icons.tsx';
import { sheets } from './sheets.ts';

const FitmentSheet = lazy(() => import('./fitment/FitmentSheet.tsx'));
const PapersSheet = lazy(() => import('./papers/PapersSheet.tsx'));

const KEYS: readonly (readonly [string, string])[] = [
  ['↑ ↓', 'wheel up, wheel down'],
  ['← →', 'steer to the left, to the right'],
  ['Shift, Alt', 'with an arrow: coarse, fine'],
  ['Home', 'design pose: travel 0, rack 0'],
  ['Space', 'play or pause the chosen cycle'],
  ['1 … 5', 'viewpoint: three-quarter, front, side, above, along the tie rod'],
  ['G', 'wheel and tyre ghosted, or solid again'],
  ['C', 'wheel and tyre cut open, or solid again'],
  ['H', 'hold the present design as yesterday, or let it go'],
  ['Ctrl+Z', 'undo'],
  ['Ctrl+Shift+Z', 'redo'],
  ['Ctrl+O, Ctrl+S', 'open a file, save as a file'],
  ['Esc', 'give up a drag, close what is open'],
  ['?', 'this sheet'],
];

const HANDS: readonly (readonly [string, string])[] = [
  ['Drag the wheel', 'up and down through its travel, sideways around its steering axis'],
  ['Alt and drag the wheel', 'both at once'],
  ['Drag beside it', 'look from elsewhere; a view’s own button or key puts the picture back'],
  ['Scroll, or two fingers', 'nearer or farther'],
  ['Right or middle button', 'shift the picture'],
  [
    'A point’s handle',
    'on from Drawings: drag it freely, or by one of its three arrows along an axis',
  ],
  ['Shift and drag a handle', 'a tenth as far, for fine work'],
  ['The dot on the map', 'travel and steering at once'],
  ['Esc', 'while you drag: back to where it was'],
];

const CAUTIONS: readonly string[] = [
  'Results are kinematics of rigid parts: no bush compliance, no joint play, no tyre deflection beyond the loaded radius. Measure again on the vehicle before cutting.',
  'Strength is not checked: not of arms, not of welds, not of tabs. Steering and suspension parts carry lives.',
  'Local vehicle codes and licensed alignment practice come first, and the part makers’ limits for joints, shafts and dampers.',
  'Work on stands under the frame with the wheels chocked and nobody under a jack. Release stored spring energy before anything is unbolted.',
  'Check hoses and wires by hand at both locks, and stick-on weights the model does not state: the bench does not see them.',
  'Use the vehicle maker’s torque figures. Tighten rubber bushes at ride height, fit new cotter pins and jam nuts, and check wheel nuts again after 50 to 100 miles.',
  'A lift lowers the wheel in the body’s frame: it adds neither travel nor bump clearance, and moves joints and shafts to the droop side.',
  'A bent tie rod is taken as held by its stud. A real one can roll between its joints.',
];

function Sheet({ title, children }: { title: string; children: ReactNode }) {
  const { dialog, isClosed } = useModal();
  return (
    <dialog
      ref={dialog}
      className="sheet"
      aria-labelledby="sheet-title"
      onClose={() => {
        if (isClosed()) sheets.setState({ open: null });
      }}
      onPointerDown={(event) => {
        // The sheet's own padding lies inside; only the backdrop is the dialog itself.
        if (event.target === dialog.current) dialog.current.close();
      }}
    >
      <div className="sheet-body">
        <h2 id="sheet-title">{title}</h2>
        {children}
        <button
          type="button"
          className="bar-button bar-icon sheet-close"
          aria-label="Close"
          onClick={() => dialog.current?.close()}
        >
          <Icon name="close" />
        </button>
      </div>
    </dialog>
  );
}

function Keys() {
  return (
    <Sheet title="Keys">
      <dl className="sheet-keys">
        {KEYS.map(([keys, meaning]) => (
          <div key={keys}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <h3>By hand</h3>
      <dl className="sheet-keys sheet-hands">
        {HANDS.map(([act, meaning]) => (
          <div key={act}>
            <dt>{act}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <p>
        Hover or tap the name of a reading and it explains itself. The picture stands still with the
        body: the ground lies under the tyre, wherever the wheel is.
      </p>
    </Sheet>
  );
}

function Cautions() {
  return (
    <Sheet title="Cautions">
      <ul className="sheet-cautions">
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Sheet>
  );
}

export function Sheets() {
  const open = useStore(sheets, (state) => state.open);
  if (open === null) return null;
  if (open === 'fitment') return <FitmentSheet />;
  if (open === 'papers') return <PapersSheet />;
  return open === 'help' ? <Keys /> : <Cautions />;
}
