/** Bytes in letters that an address carries as they are: base64url without padding (RFC 4648, section 5). */

export function toBase64Url(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Null unless it is exactly what `toBase64Url` makes of some bytes. */
export function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]*$/.test(text)) return null;
  let plain: string;
  try {
    plain = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  } catch {
    return null;
  }
  const bytes = Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
  // The last letter may carry bits that belong to no byte: two texts would mean the same.
  return toBase64Url(bytes) === text ? bytes : null;
}
