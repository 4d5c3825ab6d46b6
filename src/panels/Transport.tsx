export function Transport() {
  return null;
}
