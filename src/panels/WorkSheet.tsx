/** The frame of the work sheet that lies open in the dock: its title, its width, closing, and its body that scrolls. */
import './workSheet.css';
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import { Icon } from './icons.tsx';
import { Late } from './Late.tsx';
import type { DockedSheet as Sheet } from './workSheets.ts';

function WidthButton() {
  const isWide = useStore(view, (state) => state.isWorkWide);
  const label = isWide ? 'Make the sheet narrower' : 'Make the sheet wider';
  return (
    <button
      type="button"
      className="bar-button bar-icon"
      aria-label={label}
      title={label}
      onClick={() => view.widenWork(!isWide)}
    >
      <Icon name={isWide ? 'narrow' : 'widen'} />
    </button>
  );
}

/** The body alone, in the container its styles may ask. */
export function WorkBody({ sheet }: { readonly sheet: Sheet }) {
  return (
    // Another sheet begins at its top, however far the one before was scrolled.
    <div key={sheet.key} className="work-body" data-work={sheet.key}>
      <Late load={sheet.load} />
    </div>
  );
}

export function WorkSheet({ sheet }: { readonly sheet: Sheet }) {
  const title = useRef<HTMLHeadingElement>(null);
  // A reader's keyboard goes on where the sheet begins, when it was the keyboard that opened it.
  useEffect(() => {
    if (document.activeElement?.matches(':focus-visible[data-rail]') === true)
      title.current?.focus();
  }, []);
  return (
    <section className="work-sheet" data-panel="work" aria-labelledby="work-title">
      <header className="work-head">
        <h2 id="work-title" ref={title} tabIndex={-1}>
          {sheet.title}
        </h2>
        <WidthButton />
        <button
          type="button"
          className="bar-button bar-icon"
          aria-label="Put the sheet away"
          title="Put the sheet away (Esc)"
          onClick={() => view.openWork(null)}
        >
          <Icon name="close" />
        </button>
      </header>
      <WorkBody sheet={sheet} />
    </section>
  );
}
