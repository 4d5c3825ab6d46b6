/** A labelled text that is taken when it is left or entered; Escape puts back what was there. */
import { type KeyboardEvent, useId, useState } from 'react';

export interface TextEntryProps {
  readonly label: string;
  readonly text: string;
  /** Lines; one if left out, and then Enter enters. */
  readonly rows?: number;
  readonly onEntered: (text: string) => void;
}

export function TextEntry({ label, text, rows = 1, onEntered }: TextEntryProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);

  function enter(): void {
    if (draft !== null && draft.trim() !== text) onEntered(draft.trim());
    setDraft(null);
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key === 'Enter' && rows === 1) enter();
    if (event.key === 'Escape' && draft !== null) {
      // Only the draft is given up, not the sheet it stands in.
      event.preventDefault();
      setDraft(null);
    }
  }

  const shared = {
    id,
    value: draft ?? text,
    autoComplete: 'off',
    onChange: (event: { readonly target: { readonly value: string } }) =>
      setDraft(event.target.value),
    onBlur: enter,
    onKeyDown,
  };
  return (
    <div className="files-entry">
      <label htmlFor={id}>{label}</label>
      {rows === 1 ? <input type="text" {...shared} /> : <textarea rows={rows} {...shared} />}
    </div>
  );
}
