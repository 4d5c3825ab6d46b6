export function Readings() {
  return null;
}
