/** A list to choose from that adds what is chosen, and then stands ready for the next. */

export interface ChoiceGroup {
  readonly label: string;
  readonly choices: readonly (readonly [value: string, label: string])[];
}

export function AddChoice({
  label,
  groups,
  onAdd,
}: {
  readonly label: string;
  readonly groups: readonly ChoiceGroup[];
  readonly onAdd: (value: string) => void;
}) {
  return (
    <select
      className="plan-add"
      aria-label={label}
      value=""
      onChange={(event) => onAdd(event.target.value)}
    >
      <option value="">{label}…</option>
      {groups.map((group) => (
        <optgroup key={group.label} label={group.label}>
          {group.choices.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  );
}
