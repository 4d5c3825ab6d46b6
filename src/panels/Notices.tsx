/** Notices in words, at the head of the page, each to be put away. */
import './notices.css';
import { useStore } from 'zustand';
import { notices } from '../state/bench.ts';
import type { Notice } from '../state/notices.ts';

function Entry({ notice }: { readonly notice: Notice }) {
  const { key, kind, text, action } = notice;
  return (
    <div className={`notice notice-${kind}`} role={kind}>
      <p>{text}</p>
      {action && (
        <button type="button" className="notice-action" onClick={action.run}>
          {action.label}
        </button>
      )}
      <button
        type="button"
        className="notice-dismiss"
        aria-label="Put this notice away"
        onClick={() => notices.dismiss(key)}
      >
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
          <path d="M3 3l10 10M13 3L3 13" fill="none" stroke="currentColor" strokeWidth="1.8" />
        </svg>
      </button>
    </div>
  );
}

export function Notices() {
  const list = useStore(notices, (state) => state.list);
  return (
    <div className="notices">
      {list.map((notice) => (
        // A new text is a new element, so that it is read out again.
        <Entry key={`${notice.key} ${notice.text}`} notice={notice} />
      ))}
    </div>
  );
}
