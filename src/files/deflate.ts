/** Raw deflate (RFC 1951) by the platform's own streams. */

/** Null where the platform has no such stream. */
export async function deflated(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array | null> {
  let packer: CompressionStream;
  try {
    packer = new CompressionStream('deflate-raw');
  } catch {
    return null;
  }
  const packed = new Blob([bytes]).stream().pipeThrough(packer);
  return new Uint8Array(await new Response(packed).arrayBuffer());
}

export type Inflated =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly why: 'unknown' | 'broken' | 'large' };

function joined(parts: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Unpacks at most `most` bytes and stops there: a few kilobytes may be packed to swell a thousandfold. */
export async function inflated(bytes: Uint8Array<ArrayBuffer>, most: number): Promise<Inflated> {
  let unpacker: DecompressionStream;
  try {
    unpacker = new DecompressionStream('deflate-raw');
  } catch {
    return { ok: false, why: 'unknown' };
  }
  const reader = new Blob([bytes]).stream().pipeThrough(unpacker).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return { ok: true, bytes: joined(parts, size) };
      size += value.length;
      if (size > most) {
        await reader.cancel();
        return { ok: false, why: 'large' };
      }
      parts.push(value);
    }
  } catch {
    return { ok: false, why: 'broken' };
  }
}
