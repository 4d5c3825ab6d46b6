/** A row's name, what stands beside it, and the way to take it off its list. */
import type { ReactNode } from 'react';
import { Icon } from '../icons.tsx';

export function RowHead({
  title,
  onRemove,
  children,
}: {
  readonly title: string;
  readonly onRemove: () => void;
  readonly children?: ReactNode;
}) {
  return (
    <div className="plan-head">
      <h4>{title}</h4>
      <span className="plan-now">{children}</span>
      <button
        type="button"
        className="plan-remove"
        aria-label={`Take off: ${title}`}
        onClick={onRemove}
      >
        <Icon name="close" />
      </button>
    </div>
  );
}
