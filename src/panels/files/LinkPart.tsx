/** The work as a link to copy, and a link pasted in its place. */
import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { fragmentIn, linkOf } from '../../files/link.ts';
import { documentStore } from '../../state/bench.ts';
import { linkTaker } from './links.ts';

/** Above it mail programs and messengers begin to cut addresses (common practice, no source). */
const SAFE_LENGTH = 2000;

interface Made {
  readonly link: string;
  readonly isCopied: boolean;
}

async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

function MadeLink({ made: { link, isCopied } }: { readonly made: Made }) {
  const id = useId();
  const box = useRef<HTMLTextAreaElement>(null);
  const hasMeshes = useStore(documentStore, ({ model }) =>
    (model.obstacles ?? []).some((one) => 'file' in one),
  );
  useEffect(() => {
    if (isCopied) return;
    box.current?.focus();
    box.current?.select();
  }, [isCopied]);
  return (
    <div className="files-entry">
      <label htmlFor={id}>Link to this design</label>
      <textarea
        ref={box}
        id={id}
        className="files-link"
        readOnly
        rows={3}
        value={link}
        onFocus={({ target }) => target.select()}
      />
      <p role="status">
        {isCopied
          ? 'Copied: '
          : 'This browser does not let the page copy: take the link from here. '}
        {link.length.toLocaleString('en-US')} characters, the whole design in them; nothing was sent
        anywhere.
        {link.length > SAFE_LENGTH && ' Some mail programs cut a link this long.'}
        {hasMeshes && ' Mesh files are named in it, not held: send them along.'}
        {` It opens where a bench is served at ${location.host || 'the same place'}; at any other, paste it under “Open a link”.`}
      </p>
    </div>
  );
}

/** Makes a link of the work as it is when it is asked for. */
function CopyLink() {
  const model = useStore(documentStore, (state) => state.model);
  const [made, setMade] = useState<(Made & { readonly of: typeof model }) | null>(null);
  const [refusal, setRefusal] = useState('');

  async function make(): Promise<void> {
    const making = await linkOf(model);
    setRefusal(making.ok ? '' : making.message);
    if (!making.ok) return setMade(null);
    const address = new URL(location.href);
    address.hash = making.fragment;
    setMade({ link: address.href, isCopied: await copied(address.href), of: model });
  }

  return (
    <>
      <button type="button" className="files-wide" onClick={() => void make()}>
        Copy a link
      </button>
      {made?.of === model && <MadeLink made={made} />}
      {refusal !== '' && (
        <p role="alert" className="files-refusal">
          {refusal}
        </p>
      )}
    </>
  );
}

function PasteLink({ onDone }: { readonly onDone: () => void }) {
  const id = useId();
  const [pasted, setPasted] = useState('');
  const [refusal, setRefusal] = useState('');

  async function open(event: FormEvent): Promise<void> {
    event.preventDefault();
    const fragment = fragmentIn(pasted);
    const why =
      fragment === null
        ? 'Found no link to a design here: one holds “#design=” and letters after it.'
        : await linkTaker.take(fragment);
    setRefusal(why ?? '');
    if (why === null) onDone();
  }

  return (
    <form className="files-entry" onSubmit={(event) => void open(event)}>
      <label htmlFor={id}>Open a link</label>
      <div className="files-paste">
        <input
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          placeholder="Paste it here"
          value={pasted}
          aria-invalid={refusal !== '' || undefined}
          aria-describedby={refusal === '' ? undefined : `${id}-why`}
          onChange={({ target }) => setPasted(target.value)}
        />
        <button type="submit" disabled={pasted.trim() === ''}>
          Open
        </button>
      </div>
      {refusal !== '' && (
        <p id={`${id}-why`} role="alert" className="files-refusal">
          {refusal}
        </p>
      )}
    </form>
  );
}

export function LinkPart({ onDone }: { readonly onDone: () => void }) {
  return (
    <>
      <h2>Share by link</h2>
      <CopyLink />
      <PasteLink onDone={onDone} />
    </>
  );
}
