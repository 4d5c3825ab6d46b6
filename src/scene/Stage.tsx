/** The stage: the corner in three dimensions. */
export function Stage() {
  return null;
}
