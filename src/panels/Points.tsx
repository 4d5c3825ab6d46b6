export default function Points() {
  return null;
}
