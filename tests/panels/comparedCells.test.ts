// What the comparison's cells say of two figures that read apart, or alike.
import { expect, it } from 'vitest';
import { measureDesign, STATIONS } from '../../solver/index.ts';
import { shownRows } from '../../src/panels/compare/cells.ts';
import { PRESENT_MARK } from '../../src/state/marks.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const columns = SHIPPED.map((name) => ({
  key: 'present' as const,
  name,
  mark: PRESENT_MARK,
  measured: measureDesign(shipped(name)),
}));

it.each(['mm', 'inch', 'sixteenth'] as const)(
  'calls no two figures the same that read apart, in %s',
  (unit) => {
    const rows = STATIONS.flatMap((station) => shownRows({ columns, base: 0 }, station, unit));
    const pairs = rows.flatMap(({ cells: [base, ...others] }) =>
      others.filter(({ isAbsent }) => !isAbsent && !base!.isAbsent).map((cell) => [base!, cell]),
    );
    const same = pairs.filter(([, cell]) => cell!.words === 'the same');
    expect(same.filter(([base, cell]) => base!.text !== cell!.text)).toEqual([]);
    expect(Math.min(same.length, pairs.length - same.length)).toBeGreaterThan(10);
  },
);

it('says so where less than a step lies between two figures', () => {
  const [factory, long] = ['half-ton-factory', 'half-ton-long-travel'].map(
    (name) => columns.find((column) => column.name === name)!,
  );
  const rows = shownRows({ columns: [factory!, long!], base: 0 }, 'ride', 'mm');
  const { cells } = rows.find(({ row }) => row.key === 'motionRatioRate')!;
  expect(cells.map(({ text }) => text)).toEqual(['0.014/100 mm', '0.015/100 mm']);
  expect(cells[1]!.words).toBe('less than 0.001/100 mm apart');
});
