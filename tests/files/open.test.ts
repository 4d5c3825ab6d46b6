import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeModel } from '../../solver/index.ts';
import { LARGEST_FILE, type OpenedFile, openModelFile } from '../../src/files/open.ts';
import { modelFileName } from '../../src/files/save.ts';
import { SHIPPED } from '../../src/files/shipped.ts';
import { FULL_MODEL } from '../support/full-model.ts';

function fileOf(name: string, content: string | Uint8Array<ArrayBuffer>): OpenedFile {
  return new File([content], name);
}

describe('a file', () => {
  it('that was saved is opened as the same model', async () => {
    const file = fileOf('mine.json', writeModel(FULL_MODEL));
    expect(await openModelFile(file)).toEqual({ ok: true, model: FULL_MODEL, origin: 'mine.json' });
  });

  it('may begin with a byte order mark', async () => {
    const file = fileOf('mine.json', `\ufeff${writeModel(FULL_MODEL)}`);
    expect(await openModelFile(file)).toMatchObject({ ok: true });
  });

  it.each<[string, OpenedFile, string]>([
    ['empty', fileOf('a.json', ''), 'a.json is empty.'],
    ['blank', fileOf('a.json', ' \n\t'), 'a.json is empty.'],
    [
      'binary',
      fileOf('a.png', new Uint8Array([137, 80, 78, 71, 0, 1])),
      'a.png is not a text file. A model file is JSON text in UTF-8.',
    ],
    [
      'no UTF-8',
      fileOf('a.json', new Uint8Array([0x7b, 0xff, 0x7d])),
      'a.json is not a text file. A model file is JSON text in UTF-8.',
    ],
    [
      'too large, and therefore never read',
      {
        name: 'a.json',
        size: LARGEST_FILE + 100_000,
        arrayBuffer: () => Promise.reject(new Error('was read')),
      },
      'a.json is 5.1 MB. A model file is a few kilobytes; over 5 MB none is opened.',
    ],
    [
      'a folder',
      { name: 'models', size: 4096, arrayBuffer: () => Promise.reject(new Error('a folder')) },
      'models could not be read. It may be a folder, or have been moved.',
    ],
    [
      'unsound',
      fileOf('a.json', writeModel({ ...FULL_MODEL, wheel: { ...FULL_MODEL.wheel, width: -8 } })),
      'a.json: wheel.width: found -8, wanted a number above 0 and below 1e5 (inch code)',
    ],
  ])('that is %s is refused in one sentence', async (_, file, message) => {
    expect(await openModelFile(file)).toEqual({ ok: false, message });
  });

  it('of any bytes is answered, never thrown at', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), async (bytes) => {
        const opening = await openModelFile(fileOf('any', new Uint8Array(bytes)));
        expect(opening.ok).toBe(false);
      }),
    );
  });
});

describe('the name of a file', () => {
  it.each([
    ['Half-ton four-wheel drive, factory height', 'half-ton-four-wheel-drive-factory-height.json'],
    ['  Überlänge: 20 mm / links ', 'überlänge-20-mm-links.json'],
    ['../../etc/passwd', 'etc-passwd.json'],
    ['CON', 'con-corner.json'],
    ['???', 'corner.json'],
    ['', 'corner.json'],
    ['x'.repeat(200), `${'x'.repeat(60)}.json`],
  ])('from %j is %j', (name, file) => {
    expect(modelFileName(name)).toBe(file);
  });

  it('is safe whatever the model is called', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (name) => {
        const file = modelFileName(name);
        expect(file).toMatch(/^[\p{L}\p{N}\p{M}][\p{L}\p{N}\p{M}-]*\.json$/u);
      }),
    );
  });
});

it('every shipped model opens under its own name', async () => {
  expect(SHIPPED.length).toBeGreaterThan(0);
  for (const { file, name, open } of SHIPPED) {
    const opening = await open();
    expect(opening.ok ? opening.model.name : opening.message).toBe(name);
    expect(opening).toMatchObject({ origin: file });
  }
});
