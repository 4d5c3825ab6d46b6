/** Where a group's numbers come from, folded away beside its title. */
import { SOURCES } from './sources.ts';

export function Sources({ group, title }: { group: string; title: string }) {
  const sources = SOURCES[group] ?? [];
  return (
    <details className="fitment-sources">
      <summary aria-label={`Sources: ${title}`}>Sources</summary>
      <dl>
        {sources.map(({ what, from }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{from}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
