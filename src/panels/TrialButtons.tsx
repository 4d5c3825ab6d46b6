/** What can be done with a changed design that is offered by name: try it as a ghost; while it is on trial, keep it or take it back. */

export function TrialButtons({
  title,
  isOn,
  onTry,
  onKeep,
  onTakeBack,
}: {
  readonly title: string;
  /** Whether it is on the bench now. */
  readonly isOn: boolean;
  readonly onTry: () => void;
  readonly onKeep: () => void;
  readonly onTakeBack: () => void;
}) {
  if (!isOn) {
    return (
      <button
        type="button"
        className="bar-button"
        aria-label={`Try as ghost: ${title}`}
        title="Put it on the bench and hold the present design as the ghost"
        onClick={onTry}
      >
        Try as ghost
      </button>
    );
  }
  return (
    <>
      <button type="button" className="bar-button" aria-label={`Keep: ${title}`} onClick={onKeep}>
        Keep
      </button>
      <button
        type="button"
        className="bar-button"
        aria-label={`Take back: ${title}`}
        onClick={onTakeBack}
      >
        Take back
      </button>
    </>
  );
}
