/** Tells one file from another by its bytes. No secret: it guards against the wrong file, not against a forger. */

function mixed(hash: number): number {
  let h = hash;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** Sixteen digits 0-9 a-f. Two lanes of 32 bits, each mixed as in MurmurHash3 (public domain); a byte changed changes both. */
export function fingerprint(bytes: Uint8Array): string {
  let one = 0x9e3779b9;
  let other = bytes.length >>> 0;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  for (; at + 4 <= bytes.length; at += 4) {
    const word = view.getUint32(at, true);
    one = Math.imul(one ^ Math.imul(word, 0xcc9e2d51), 0x1b873593);
    one = (one << 13) | (one >>> 19);
    other = Math.imul((other << 15) | (other >>> 17), 5) + Math.imul(word ^ one, 0x2545f491);
  }
  for (; at < bytes.length; at += 1) {
    one = Math.imul(one ^ bytes[at]!, 0x01000193);
    other = Math.imul(other + bytes[at]!, 0x85ebca6b) ^ one;
  }
  return [mixed(one), mixed(other ^ one)]
    .map((half) => half.toString(16).padStart(8, '0'))
    .join('');
}
