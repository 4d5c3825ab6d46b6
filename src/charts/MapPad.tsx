export function MapPad() {
  return null;
}
