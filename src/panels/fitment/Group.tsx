/** A titled group of rows with its sources, and the head of a row. */
import type { ReactNode } from 'react';
import { Sources } from './Sources.tsx';

export function RowHead({ label, hint }: { label: string; hint?: string | undefined }) {
  return (
    <th scope="row">
      {label}
      {hint !== undefined && <small>{hint}</small>}
    </th>
  );
}

export function Group({
  title,
  source,
  width,
  children,
}: {
  title: string;
  source: string;
  width: number;
  children: ReactNode;
}) {
  return (
    <tbody>
      <tr className="fitment-group">
        <th scope="colgroup" colSpan={width + 1}>
          <div>
            <span>{title}</span>
            <Sources group={source} title={title} />
          </div>
        </th>
      </tr>
      {children}
    </tbody>
  );
}
