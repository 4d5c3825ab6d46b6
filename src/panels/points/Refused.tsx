/** Why an edit was refused, beside the field it belongs to. */
import { useEffect, useRef } from 'react';

export function Refused({
  id,
  message,
}: {
  readonly id?: string | undefined;
  readonly message: string | null;
}) {
  const line = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (message !== null) line.current?.scrollIntoView({ block: 'nearest' });
  }, [message]);
  if (message === null) return null;
  return (
    <p ref={line} id={id} className="points-refusal" role="alert">
      {message}
    </p>
  );
}
