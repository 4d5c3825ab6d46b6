export function TopBar() {
  return null;
}
