import { deflateRawSync, inflateRawSync, crc32 as zlibCrc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Model, writeModel } from '../../solver/index.ts';
import { fromBase64Url, toBase64Url } from '../../src/files/base64url.ts';
import { crc32 } from '../../src/files/crc32.ts';
import { inflated } from '../../src/files/deflate.ts';
import {
  fragmentIn,
  isLink,
  LARGEST_TEXT,
  LONGEST_LINK,
  linkOf,
  openLink,
} from '../../src/files/link.ts';
import { buildable } from '../support/arbitraries.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);

async function made(model: Model): Promise<string> {
  const making = await linkOf(model);
  if (!making.ok) throw new Error(making.message);
  return making.fragment;
}

/** A link of any content, whole as far as its check goes; packed and checked by Node's own library. */
function forged(content: string | Uint8Array, pack: (bytes: Buffer) => Buffer = deflateRawSync) {
  const packed = pack(Buffer.from(content));
  const check = Buffer.alloc(4);
  check.writeUInt32LE(zlibCrc32(packed));
  return `#design=1.${Buffer.concat([check, packed]).toString('base64url')}`;
}

async function messageOf(fragment: string): Promise<string> {
  const opening = await openLink(fragment);
  return opening.ok ? 'it was opened' : opening.message;
}

describe('the pieces of a link', () => {
  it('check as the published values say', () => {
    // The check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms (reveng).
    expect(crc32(ascii('123456789'))).toBe(0xcbf43926);
  });

  it('write letters as RFC 4648, section 10, says, without padding', () => {
    const vectors = ['', 'Zg', 'Zm8', 'Zm9v', 'Zm9vYg', 'Zm9vYmE', 'Zm9vYmFy'];
    vectors.forEach((text, length) => {
      expect(toBase64Url(ascii('foobar'.slice(0, length)))).toBe(text);
      expect(fromBase64Url(text)).toEqual(ascii('foobar'.slice(0, length)));
    });
    // Section 5: the 62nd and 63rd letters are "-" and "_".
    expect(toBase64Url(Uint8Array.of(0xfb, 0xff))).toBe('-_8');
    // Bits that belong to no byte, padding, the other alphabet, a length that no bytes have.
    for (const text of ['-_9', 'Zg==', '+/8', 'Zm9vY']) expect(fromBase64Url(text)).toBe(null);
  });

  it('stop unpacking at the limit, and read nothing that comes after it', async () => {
    const bomb = deflateRawSync(new Uint8Array(20_000_000));
    // Its end is broken: who came that far would say so.
    const broken = Uint8Array.from(bomb).fill(0xff, bomb.length - 2000);
    expect(await inflated(broken, 1000)).toEqual({ ok: false, why: 'large' });
    expect(await inflated(broken, 30_000_000)).toEqual({ ok: false, why: 'broken' });
  });
});

describe('a link', () => {
  it.each(SHIPPED)('to %s brings it back, and is short', async (name) => {
    const model = shipped(name);
    const fragment = await made(model);
    expect(await openLink(fragment)).toEqual({ ok: true, model, origin: 'shared link' });
    expect(fragment.length).toBeLessThan(3000);
    expect(fragment).toMatch(/^#design=1\.[\w-]+$/);
  });

  it('to a model with every part, and to any corner, brings it back to the last digit', async () => {
    expect(await openLink(await made(FULL_MODEL))).toMatchObject({ model: FULL_MODEL });
    await fc.assert(
      fc.asyncProperty(buildable, async (model) => {
        const opening = await openLink(await made(model));
        expect(opening.ok && writeModel(opening.model)).toBe(writeModel(model));
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('is what its description says, read by another library', async () => {
    const bytes = Buffer.from((await made(FULL_MODEL)).slice('#design=1.'.length), 'base64url');
    const packed = bytes.subarray(4);
    expect(bytes.readUInt32LE()).toBe(zlibCrc32(packed));
    const text = inflateRawSync(packed).toString('utf8');
    expect(JSON.parse(text)).toEqual(JSON.parse(writeModel(FULL_MODEL)));
  });

  it('may be broken into lines and written with percent signs on its way', async () => {
    const fragment = await made(FULL_MODEL);
    const broken = fragment.replace(/.{60}/g, '$&\r\n ');
    const signed = fragment.replace(/.{60}/g, '$&%0A').replace('1.', '1%2E');
    for (const text of [broken, signed]) expect(await openLink(text)).toMatchObject({ ok: true });
  });

  it('that is damaged anywhere, in any way, is refused in a sentence', async () => {
    const whole = await Promise.all(SHIPPED.map((name) => made(shipped(name))));
    const letters = '-_0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz.!é)';
    const letter = fc.nat({ max: letters.length - 1 }).map((at) => letters[at]!);
    const piece = fc.array(letter, { minLength: 1, maxLength: 5 }).map((all) => all.join(''));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...whole),
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        piece,
        fc.constantFrom('change', 'insert', 'drop', 'cut', 'lose'),
        async (link, share, put, way) => {
          const start = '#design='.length;
          const at = start + Math.floor(share * (link.length - start));
          const damaged = {
            change: link.slice(0, at) + put + link.slice(at + put.length),
            insert: link.slice(0, at) + put + link.slice(at),
            drop: link.slice(0, at) + link.slice(at + put.length),
            cut: link.slice(0, at),
            lose: link.slice(0, start) + link.slice(at + 1),
          }[way];
          fc.pre(damaged !== link);
          expect(await messageOf(damaged)).toMatch(
            /^This link is (damaged: .+ again|of form .+)\.$/,
          );
        },
      ),
      { seed: 51, numRuns: 4000 },
    );
  });

  it.each<[string, () => string, string | RegExp]>([
    ['of a later form', () => '#design=2.abcd', /^This link is of form 2, and .+ reads form 1\. /],
    ['without an end', () => '#design=1.', /^This link is damaged: of its 0 letters/],
    ['that ends in a bracket', () => '#design=1.abcd)', /“\)” at its letter 5 of 5 is no part/],
    [
      'too long',
      () => `#design=1.${'A'.repeat(LONGEST_LINK)}`,
      'This link is 30,010 characters long. None over 30,000 is opened.',
    ],
    [
      'that swells to a thousand times its size',
      () => forged(new Uint8Array(20_000_000)),
      'This link unpacks to more than 500,000 bytes. A model is a few kilobytes: it was not opened.',
    ],
    ['that cannot be unpacked', () => forged('no deflate', (bytes) => bytes), /cannot be unpacked/],
    ['of no text', () => forged(Uint8Array.of(0x7b, 0xff, 0x7d)), /^This link holds no text\./],
    ['of no JSON', () => forged('<script>'), /^This link was not opened\. shared link: /],
    ['of no model', () => forged('{"__proto__":{"name":"x"}}'), /^This link was not opened\. /],
    [
      'to an unsound model',
      () => forged(JSON.stringify({ ...FULL_MODEL, wheel: { ...FULL_MODEL.wheel, width: -8 } })),
      'This link was not opened. shared link: wheel.width: found -8, wanted a number above 0 and below 1e5 (inch code)',
    ],
  ])('%s is refused, and said why', async (_, make, message) => {
    expect(await messageOf(make())).toMatch(message);
  });

  it('is answered, never thrown at, whatever it holds', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), fc.boolean(), async (bytes, isPacked) => {
        const link = isPacked ? forged(bytes) : forged(bytes, (same) => same);
        expect((await openLink(link)).ok).toBe(false);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  it('is not made where it would not be opened again', async () => {
    // Notes that packing does not shorten much.
    const random = fc.sample(fc.string({ minLength: 40_000, maxLength: 40_000, size: 'max' }), {
      seed: 3,
      numRuns: 1,
    })[0]!;
    const long = await linkOf({ ...FULL_MODEL, notes: random });
    expect(long.ok ? '' : long.message).toMatch(
      /^This design makes a link of \d\d,\d{3} characters; over 30,000 none is made, /,
    );
    const huge = await linkOf({ ...FULL_MODEL, notes: 'x'.repeat(LARGEST_TEXT) });
    expect(huge.ok ? '' : huge.message).toMatch(/ bytes of text; over 500,000 none is put into/);
  });

  it('is found in what a person pastes', () => {
    expect(fragmentIn('  https://bench.example/a/?b#design=1.ab-c \n')).toBe('#design=1.ab-c');
    expect(fragmentIn('design=1.abc')).toBe('#design=1.abc');
    for (const text of ['', 'https://bench.example/#', '#designs=1.a', 'my design=1']) {
      expect(fragmentIn(text)).toBe(null);
      expect(isLink(text)).toBe(false);
    }
  });
});
