/**
 * A design as the fragment of an address, which no browser sends to any server: `#design=1.` and then, in base64url, the
 * model's text in raw deflate with the CRC-32 of the packed bytes before it, low byte first. The 1 is the form's version.
 */
import { formatModelError, type Model, parseModel, writeModel } from '../../solver/index.ts';
import { fromBase64Url, toBase64Url } from './base64url.ts';
import { crc32 } from './crc32.ts';
import { deflated, inflated } from './deflate.ts';
import type { Opening } from './open.ts';

const KEY = 'design=';
const VERSION = '1';

/** Longest fragment that is made or opened, characters: browsers take more, messages and bookmarks often do not (common practice, no source). */
export const LONGEST_LINK = 30_000;

/** Most bytes of model text that a link may unpack to. A model is a few kilobytes. */
export const LARGEST_TEXT = 500_000;

/** What messages call the file that a link is. */
export const LINK_ORIGIN = 'shared link';

const CHECK_BYTES = 4;
const AGAIN = 'Copy it whole once more, or ask for it again.';
const NO_PACKING =
  'This browser cannot pack and unpack links. A newer one can; a file does it in any.';

export type LinkMaking =
  | { readonly ok: true; readonly fragment: string }
  | { readonly ok: false; readonly message: string };

function refused(message: string): { readonly ok: false; readonly message: string } {
  return { ok: false, message };
}

function count(value: number): string {
  return value.toLocaleString('en-US');
}

/** Makes the fragment, `#` included, that holds a whole model; meshes are named in it, not held. */
export async function linkOf(model: Model): Promise<LinkMaking> {
  // The file's own text in the file's own order, without the white space that only people need.
  const text = new TextEncoder().encode(JSON.stringify(JSON.parse(writeModel(model))));
  if (text.length > LARGEST_TEXT) {
    return refused(
      `This design is ${count(text.length)} bytes of text; over ${count(LARGEST_TEXT)} none is put into a link. Shorten the notes, or save it as a file.`,
    );
  }
  const packed = await deflated(text);
  if (packed === null) return refused(NO_PACKING);
  const bytes = new Uint8Array(CHECK_BYTES + packed.length);
  new DataView(bytes.buffer).setUint32(0, crc32(packed), true);
  bytes.set(packed, CHECK_BYTES);
  const fragment = `#${KEY}${VERSION}.${toBase64Url(bytes)}`;
  if (fragment.length <= LONGEST_LINK) return { ok: true, fragment };
  return refused(
    `This design makes a link of ${count(fragment.length)} characters; over ${count(LONGEST_LINK)} none is made, as it would be cut off on its way. Shorten the notes, or save it as a file.`,
  );
}

/** Whether a fragment (with or without its `#`) is meant as a design at all. */
export function isLink(fragment: string): boolean {
  return fragment.replace(/^#/, '').startsWith(KEY);
}

/** The fragment in what a person pasted: a whole address, of any bench, or the end of one. Null when there is none. */
export function fragmentIn(pasted: string): string | null {
  const at = pasted.indexOf(`#${KEY}`);
  if (at >= 0) return pasted.slice(at).trim();
  const bare = pasted.trim();
  return isLink(bare) ? `#${bare}` : null;
}

/** Undoes what messengers do to letters: breaks in lines, and signs written as %20. */
function cleaned(text: string): string {
  let plain = text;
  try {
    plain = decodeURIComponent(text);
  } catch {
    // A stray % is found below, as any other sign that does not belong.
  }
  return plain.replace(/\s+/g, '');
}

/** The packed bytes in a link, once they are proven to be whole. */
function packedIn(fragment: string): Uint8Array<ArrayBuffer> | string {
  if (fragment.length > LONGEST_LINK) {
    return `This link is ${count(fragment.length)} characters long. None over ${count(LONGEST_LINK)} is opened.`;
  }
  const text = cleaned(fragment.slice(fragment.indexOf(KEY) + KEY.length));
  const [, version, letters = ''] = /^(\d{1,6})\.(.*)$/su.exec(text) ?? [];
  if (version === undefined) return `This link is damaged: its beginning is not whole. ${AGAIN}`;
  if (version !== VERSION) {
    return `This link is of form ${version}, and this bench reads form ${VERSION}. A bench of the version that made it opens it.`;
  }
  const stray = /[^\w-]/u.exec(letters);
  if (stray !== null) {
    return `This link is damaged: “${stray[0]}” at its letter ${count(stray.index + 1)} of ${count(letters.length)} is no part of a link. ${AGAIN}`;
  }
  const bytes = fromBase64Url(letters);
  const cut = `This link is damaged: of its ${count(letters.length)} letters some are missing or changed. ${AGAIN}`;
  if (bytes === null || bytes.length <= CHECK_BYTES) return cut;
  const packed = bytes.slice(CHECK_BYTES);
  return new DataView(bytes.buffer).getUint32(0, true) === crc32(packed) ? packed : cut;
}

const UNPACKING = {
  unknown: NO_PACKING,
  broken: `This link is damaged: what it holds cannot be unpacked. ${AGAIN}`,
  large: `This link unpacks to more than ${count(LARGEST_TEXT)} bytes. A model is a few kilobytes: it was not opened.`,
} as const;

/** Reads the model out of a fragment. Refusals are words for people, the contract's message where the text was read. Never throws. */
export async function openLink(fragment: string): Promise<Opening> {
  const packed = packedIn(fragment);
  if (typeof packed === 'string') return refused(packed);
  const unpacked = await inflated(packed, LARGEST_TEXT);
  if (!unpacked.ok) return refused(UNPACKING[unpacked.why]);
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(unpacked.bytes);
  } catch {
    return refused('This link holds no text. A link holds a model as JSON text in UTF-8.');
  }
  const read = parseModel(text, LINK_ORIGIN);
  if (!read.ok) return refused(`This link was not opened. ${formatModelError(read.error)}`);
  return { ok: true, model: read.model, origin: LINK_ORIGIN };
}
