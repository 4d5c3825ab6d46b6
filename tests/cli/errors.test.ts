/** Bad input: exit status 2, one whole line on standard error, nothing on standard output. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { armscribe } from '../support/armscribe.ts';

const MODEL = 'models/half-ton-factory.json';
const folder = mkdtempSync(join(tmpdir(), 'armscribe-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A file with this content in a folder of its own. */
function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const VERBS = 'pose, sweep, clearance, compare, align, uncertainty, report, check, or --help';
const POSE_OPTIONS = '--travel a number of mm, --rack a number of mm, --json';
const SWEEP_OPTIONS = '--travel A:B:STEP (mm), --rack A:B:STEP (mm), --csv, --json';
const MILLIMETRES = 'a number of mm smaller than 1e5 in size';
const RANGE = 'wanted A:B:STEP or one number (mm)';

describe('words', () => {
  test.each([
    [[], `armscribe: VERB: found nothing, wanted one of ${VERBS}`],
    [['poses'], `armscribe: VERB: found "poses", wanted one of ${VERBS}`],
    [['a\nb'], `armscribe: VERB: found "a\\nb", wanted one of ${VERBS}`],
    [
      ['clearance', MODEL, '--travel', '5'],
      'armscribe clearance: --travel: found an unknown option, wanted one of --json',
    ],
    [['clearance'], 'armscribe clearance: MODEL: found nothing, wanted the name of a model file'],
    [
      ['align', MODEL, '--camber', 'x'],
      'armscribe align: --camber: found "x", wanted a number of degrees smaller than 1e5 in size',
    ],
    [
      ['align', MODEL, '--caster', '--json'],
      'armscribe align: --caster: found no value, wanted a number of degrees',
    ],
    [['pose'], 'armscribe pose: MODEL: found nothing, wanted the name of a model file'],
    [['pose', MODEL, MODEL], 'armscribe pose: MODEL: found 2 words, wanted one model file'],
    [
      ['pose', MODEL, '--travl', '5'],
      `armscribe pose: --travl: found an unknown option, wanted one of ${POSE_OPTIONS}`,
    ],
    [
      ['pose', MODEL, '-12'],
      `armscribe pose: -12: found an unknown option, wanted one of ${POSE_OPTIONS}`,
    ],
    [
      ['pose', MODEL, '--constructor'],
      `armscribe pose: --constructor: found an unknown option, wanted one of ${POSE_OPTIONS}`,
    ],
    [
      ['pose', MODEL, '--travel'],
      'armscribe pose: --travel: found no value, wanted a number of mm',
    ],
    [
      ['pose', MODEL, '--travel='],
      'armscribe pose: --travel: found no value, wanted a number of mm',
    ],
    [
      ['pose', MODEL, '--travel', '--json'],
      'armscribe pose: --travel: found no value, wanted a number of mm',
    ],
    [['pose', MODEL, '--json=yes'], 'armscribe pose: --json: found the value "yes", wanted none'],
    [
      ['pose', MODEL, '--rack', '1', '--rack', '1'],
      'armscribe pose: --rack: found the option twice, wanted it once',
    ],
    [
      ['pose', MODEL, '--travel', '1,5'],
      `armscribe pose: --travel: found "1,5", wanted ${MILLIMETRES}`,
    ],
    [
      ['pose', MODEL, '--travel', '5mm'],
      `armscribe pose: --travel: found "5mm", wanted ${MILLIMETRES}`,
    ],
    [
      ['pose', MODEL, '--travel', '0x10'],
      `armscribe pose: --travel: found "0x10", wanted ${MILLIMETRES}`,
    ],
    [
      ['pose', MODEL, '--travel', 'Infinity'],
      `armscribe pose: --travel: found "Infinity", wanted ${MILLIMETRES}`,
    ],
    [
      ['pose', MODEL, '--rack', '-1e5'],
      `armscribe pose: --rack: found "-1e5", wanted ${MILLIMETRES}`,
    ],
    [
      ['sweep', MODEL, '--fast'],
      `armscribe sweep: --fast: found an unknown option, wanted one of ${SWEEP_OPTIONS}`,
    ],
    [
      ['sweep', MODEL, '--csv', '--json'],
      'armscribe sweep: --csv: found --json too, wanted one of the two',
    ],
    [['sweep', MODEL, '--travel', '0:10'], `armscribe sweep: --travel: found "0:10", ${RANGE}`],
    [['sweep', MODEL, '--travel', '0:10:x'], `armscribe sweep: --travel: found "0:10:x", ${RANGE}`],
    [
      ['sweep', MODEL, '--travel', '0:10:1:2'],
      `armscribe sweep: --travel: found "0:10:1:2", ${RANGE}`,
    ],
    [['sweep', MODEL, '--rack', '::'], `armscribe sweep: --rack: found "::", ${RANGE}`],
    [
      ['sweep', MODEL, '--rack', '0:10:0'],
      'armscribe sweep: --rack: found a step of 0, wanted a step that is not 0 (mm)',
    ],
    [
      ['sweep', MODEL, '--travel', '0:10:1e-9'],
      'armscribe sweep: --travel: found more than 1000000 steps, wanted a longer step (mm)',
    ],
    [
      ['sweep', MODEL, '--travel', '0:2:0.001', '--rack', '0:2:0.001'],
      'armscribe sweep: --travel, --rack: found 4004001 poses, wanted at most 1000000',
    ],
    [['check'], 'armscribe check: FILE: found nothing, wanted at least one model file'],
    [
      ['check', '--all', MODEL],
      'armscribe check: --all: found an unknown option, wanted model files and no option',
    ],
  ])('%j', (words, line) => {
    expect(armscribe(...words)).toEqual({ status: 2, out: '', err: `${line}\n` });
  });
});

describe('files', () => {
  const nothing = join(folder, 'nothing.json');
  const broken = file('broken.json', '{ "format": "armscribe/1", }');
  const binary = file('binary.json', Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d));
  const later = file('later.json', '{"format": "armscribe/9"}');

  test.each([
    [nothing, `${nothing}: (whole file): found no such file, wanted a model file`],
    [folder, `${folder}: (whole file): found a folder, wanted a model file`],
    [broken, `${broken}: line 1, column 28: found "}", wanted a key in double quotes`],
    [binary, `${binary}: (whole file): found bytes that are not UTF-8 text, wanted a model file`],
    [later, `${later}: format: found "armscribe/9" (text), wanted "armscribe/1"`],
  ])('%s, by every verb that reads one', (path, line) => {
    for (const verb of ['pose', 'sweep', 'clearance', 'check']) {
      expect(armscribe(verb, path)).toEqual({ status: 2, out: '', err: `${line}\n` });
    }
  });

  test('check tells of every bad file, and says nothing of the good ones', () => {
    expect(armscribe('check', MODEL, broken, later)).toEqual({
      status: 2,
      out: '',
      err:
        `${broken}: line 1, column 28: found "}", wanted a key in double quotes\n` +
        `${later}: format: found "armscribe/9" (text), wanted "armscribe/1"\n`,
    });
  });
});
