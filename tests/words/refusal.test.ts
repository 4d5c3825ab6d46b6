import { describe, expect, it } from 'vitest';
import { refusalWords } from '../../src/words/refusal.ts';

describe('a refusal beside its field', () => {
  it.each([
    [
      'a.json: wheel.offset: found 1000000, wanted a number smaller than 1e5 in size',
      'wheel.offset',
      'Not taken: found 1000000, wanted a number between −100,000 and 100,000.',
    ],
    [
      'a.json: wheel.width: found -8, wanted a number above 0 and below 1e5 (inch code)',
      'wheel.width',
      'Not taken: found −8, wanted a number above 0 and below 100,000 (inch code).',
    ],
    [
      'a.json: lowerArm.ballJoint[1]: found 100000, wanted a number smaller than 1e5 in size',
      'lowerArm.ballJoint',
      'Not taken: found 100000, wanted a number between −100,000 and 100,000.',
    ],
    [
      'my file: 2.json: tyre.size: found "x: y" (text), wanted a tyre size',
      'wheel.diameter',
      'Not taken, for tyre.size: found "x: y", wanted a tyre size.',
    ],
  ])('%s', (told, path, said) => {
    expect(refusalWords(told, path)).toBe(said);
  });

  it('that is of another form is left as it is', () => {
    expect(refusalWords('No room.', 'wheel')).toBe('No room.');
  });
});
