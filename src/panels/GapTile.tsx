export function GapTile() {
  return null;
}
