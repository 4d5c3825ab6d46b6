/** Tables of heights as people copy and type them. */
import { describe, expect, it } from 'vitest';
import { readHeightTable } from '../../src/words/heightTable.ts';

describe('a table of heights', () => {
  it.each([
    ['-50\t0.12', ['-50', '0.12', null]],
    ['−50;0,12;0,03', ['−50', '0,12', '0,03']],
    ['-50 0.12 ±0.03', ['-50', '0.12', '0.03']],
    ['-50, 0.12', ['-50', '0.12', null]],
    ['-50,0.12', ['-50', '0.12', null]],
    ['50 mm 0.12 °', ['50mm', '0.12°', null]],
    ['1 1/2 in  -0.1', ['1-1/2in', '-0.1', null]],
    ['0,5 0,12', ['0,5', '0,12', null]],
  ])('reads %j', (line, [height, value, plusMinus]) => {
    expect(readHeightTable(line, 'mm', false)).toEqual({
      lines: [{ height, value, plusMinus }],
      bad: [],
    });
  });

  it('leaves out a heading and blank lines, and keeps what it cannot read with the reason', () => {
    const { lines, bad } = readHeightTable(
      'travel\ttoe\n\n-50\t0.12\r\n30\n40 x\n1 2 3 4\n1 1,234\n',
      'mm',
      false,
    );
    expect(lines).toHaveLength(1);
    expect(bad.map(({ line }) => line)).toEqual(['30', '40 x', '1 2 3 4', '1 1,234']);
    expect(bad[0]!.why).toMatch(/^Found one number, wanted two/);
    expect(bad[1]!.why).toBe('“x” is not a number.');
    expect(bad[2]!.why).toMatch(/^Found 4 numbers/);
    expect(bad[3]!.why).toMatch(/comma before three digits/);
  });

  it('takes an angle for no length', () => {
    expect(readHeightTable('10 350°', 'mm', true).bad[0]!.why).toMatch(/not a length/);
    expect(readHeightTable('10 350', 'mm', true).bad).toEqual([]);
  });
});
