/** Counts React's renders of the stage's components: a drag must cause none, and a test looks. */
let renders = 0;

/** Called by each component of the stage as it renders. */
export function countRender(): void {
  renders += 1;
}

export function renderCount(): number {
  return renders;
}
