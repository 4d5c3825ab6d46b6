import { describe, expect, it } from 'vitest';
import { type PairResult, verdictOf } from '../../solver/certify/result.ts';
import { bearingChange } from '../../solver/fitment/bearing.ts';
import { type Candidate, candidateOf } from '../../solver/fitment/candidate.ts';
import { fitmentFigures } from '../../solver/fitment/figures.ts';
import { fitCandidate } from '../../solver/fitment/fit.ts';
import { divided, moved } from '../../src/panels/fitment/contour.ts';
import { FIELD_SPECS, takeSize } from '../../src/panels/fitment/fields.ts';
import type { RowContext } from '../../src/panels/fitment/figureRow.ts';
import { FIGURE_GROUPS } from '../../src/panels/fitment/figureRows.ts';
import { gapsOf, gapText, pairRows, tyreLeast } from '../../src/panels/fitment/gapRow.ts';
import { SOURCES } from '../../src/panels/fitment/sources.ts';
import type { Field } from '../../src/state/fitment.ts';
import type { LengthUnit } from '../../src/state/view.ts';
import type { FitmentAnswer } from '../../src/worker/fitmentJob.ts';
import { shipped } from '../support/models.ts';

const FACTORY = shipped('half-ton-factory');
const PRESENT = candidateOf(FACTORY);

function spec(field: Field) {
  return FIELD_SPECS.find((other) => other.field === field)!;
}

function taken(field: Field, text: string, unit: LengthUnit = 'mm', from = PRESENT): Candidate {
  const result = spec(field).take(from, text, unit);
  if (!result.ok) throw new Error(result.message);
  return result.candidate;
}

function refused(field: Field, text: string): string {
  const result = spec(field).take(PRESENT, text, 'mm');
  return result.ok ? 'taken' : result.message;
}

describe('a field', () => {
  it('shows what it takes, in every unit', () => {
    for (const unit of ['mm', 'inch', 'sixteenth'] as const) {
      for (const { field, shown } of FIELD_SPECS) {
        const again = spec(field).take(PRESENT, shown(PRESENT, unit), unit);
        expect(again.ok, field).toBe(true);
        if (again.ok) expect(shown(again.candidate, unit), field).toBe(shown(PRESENT, unit));
      }
    }
  });

  it('takes a size onto the rim it is for, and lets go of a contour drawn for another', () => {
    const drawn: Candidate = {
      ...PRESENT,
      section: [
        [-100, 220],
        [100, 220],
      ],
    };
    const other = taken('tyre', 'LT285/75R16', 'mm', drawn);
    expect(other.rimDiameter).toBe(16);
    expect(other.section).toBeUndefined();
    expect(taken('tyre', '285/70R17', 'mm', drawn).section).toEqual(drawn.section);
  });

  it('takes a tyre as it was measured, and shows it so', () => {
    const measured = taken('tyre', '790 mm x 250');
    expect(measured.tyre).toEqual({ diameter: 790, width: 250 });
    expect(measured.rimDiameter).toBe(17);
    expect(spec('tyre').shown(measured, 'inch')).toBe('Ø 790 × 250 mm');
    expect(taken('tyre', spec('tyre').shown(measured, 'inch')).tyre).toEqual(measured.tyre);
  });

  it('takes another rim with the tyre’s size, or says why there is none', () => {
    expect(taken('rimDiameter', '18').tyre).toEqual({ size: '265/70R18' });
    expect(refused('rimDiameter', '11')).toMatch(
      /No such rim with this tyre: tyres are made in rim codes/,
    );
    expect(refused('rimDiameter', 'big')).toMatch(/not a number/);
  });

  it('takes a rim as it is stamped, either way round', () => {
    for (const text of ['18x8.5', '8.5Jx18', '8,5 J x 18', '18 × 8.5JJ']) {
      const rim = taken('rimWidth', text);
      expect([rim.rimDiameter, rim.rimWidth], text).toEqual([18, 8.5]);
    }
  });

  it('takes offset and backspacing in the unit shown or named', () => {
    expect(taken('offset', '−12').mounting).toEqual({ by: 'offset', value: -12 });
    expect(taken('backspacing', '4.5', 'inch').mounting).toEqual({
      by: 'backspacing',
      value: 114.3,
    });
    expect(taken('backspacing', '4 1/2"').mounting.value).toBe(114.3);
  });

  it('leaves the mass out where it is emptied', () => {
    expect(taken('mass', '')).not.toHaveProperty('mass');
    expect(taken('mass', '12.5 kg').mass).toBe(12.5);
  });

  it('takes a size off the series only when that is insisted on', () => {
    expect(takeSize(PRESENT, '265/71R17')).toMatchObject({
      ok: false,
      nearest: '265/70R17',
      asWritten: true,
    });
    expect(takeSize(PRESENT, '265/71R17', true)).toMatchObject({ ok: true });
    expect(takeSize(PRESENT, 'nothing', true).ok).toBe(false);
  });
});

describe('figures', () => {
  const own = fitmentFigures(FACTORY);

  function cells(change: Partial<Candidate>): ReadonlyMap<string, string> {
    const result = fitCandidate(FACTORY, { ...PRESENT, ...change });
    if (!result.ok) throw new Error(result.message);
    const context: RowContext = {
      own: fitmentFigures(result.model),
      present: own,
      isPresent: false,
      unit: 'mm',
      bearing: 60,
    };
    return new Map(
      FIGURE_GROUPS.flatMap(({ rows }) =>
        rows.map(({ key, cell }): [string, string] => {
          const { figure, below } = cell(context);
          return [key, `${figure} | ${below ?? ''}`];
        }),
      ),
    );
  }

  it('say the sense of every difference in words', () => {
    const out = cells({ spacer: 25, tyre: { size: '285/75R17' }, mass: 14 });
    // 25 mm of spacer and half of 14.4 mm of section: 0.4 per mm of rim, UN Regulation 30, 6.1.1.1.
    expect(out.get('poke')).toMatch(/\+32\.2 mm poke$/);
    expect(out.get('innerLip')).toBe('134.3 mm | −25.0 mm farther out');
    // Twice the spacer, and the taller tyre's contact 0.1 mm farther out at −0.2° of camber.
    expect(out.get('track')).toMatch(/\+50\.2 mm wider$/);
    expect(out.get('speedometer')).toMatch(/^−6\.6 % \| reads too little: at 100 it is 107\.0$/);
    expect(out.get('mass')).toBe('14.0 kg | +2.5 kg heavier');
    const { after, percent } = bearingChange(-45, -20, 60);
    expect(out.get('bearing')).toBe(`${after.toFixed(1)} mm | +25.0 mm, +${percent!.toFixed(0)} %`);
    const inwards = cells({ mounting: { by: 'offset', value: 60 } });
    expect(inwards.get('poke')).toMatch(/−15\.0 mm tucked in$/);
    expect(inwards.get('bearing')).toBe('0.0 mm | −15.0 mm, −100 %');
  });

  it('say "as now" of what does not change', () => {
    for (const [key, text] of cells({})) {
      if (!/^(revolutions|rim$)/.test(key)) expect(text, key).toMatch(/as now$/);
    }
  });

  it('have their sources beside every group', () => {
    for (const group of ['fields', 'Gaps', ...FIGURE_GROUPS.map(({ title }) => title)]) {
      expect(SOURCES[group]?.length, group).toBeGreaterThan(0);
    }
  });
});

describe('a contour', () => {
  const points = [
    [-100, 230],
    [0, 200],
    [100, 230],
  ] as const;

  it('moves one point to a tenth of a millimetre, never past the axis, and divides a stretch', () => {
    expect(moved(points, 1, [3.1234, -4])).toEqual([points[0], [3.1, 0], points[2]]);
    expect(divided(points, 0)).toEqual([points[0], [-50, 215], points[1], points[2]]);
    expect(divided(points, 2)).toEqual(points);
  });
});

describe('least gaps', () => {
  const of = (names: readonly [string, string], least: number, required = 6): PairResult => ({
    names,
    least,
    provenAtLeast: least - 0.04,
    travel: -105,
    rack: 72,
    required,
    verdict: verdictOf(least, least - 0.04, required),
  });
  const answer = (proven: readonly PairResult[]): FitmentAnswer => ({
    number: 1,
    column: 'A',
    proven,
    progress: 1,
  });

  it('have a row each; pairs far from everything share a line', () => {
    const own = gapsOf(
      answer([
        of(['tieRod', 'wheel'], 28.31),
        of(['tyre', 'rail/left'], 12),
        of(['upperArm', 'tyre'], 9),
        of(['halfShaft', 'tyre'], 150),
        of(['wheel', 'rail/left'], 79),
      ]),
    );
    expect(own.get('tieRod/wheel')).toMatchObject({ least: 28.31, provenAtLeast: 28.27 });
    expect(own.get('tieRod/tyre')).toBeUndefined();
    expect(pairRows([own])).toEqual({
      near: [
        ['tieRod', 'wheel'],
        ['tieRod', 'tyre'],
        ['tyre', 'rail/left'],
        ['upperArm', 'tyre'],
        ['wheel', 'rail/left'],
      ],
      far: [['halfShaft', 'tyre']],
    });
    expect(tyreLeast(own)).toMatchObject({ to: 'upperArm', gap: { least: 9 } });
  });

  it('say state, difference, place and proof', () => {
    const near = gapText(of(['upperArm', 'tyre'], 4.2), of(['upperArm', 'tyre'], 9.7), 'mm');
    expect(near).toEqual({
      state: 'near',
      figure: '4.2 mm',
      words: 'near, −5.5 mm less room',
      where: 'travel −105, rack 72 mm',
      proof: 'proven',
    });
    const coarse = { ...of(['upperArm', 'tyre'], 90), provenAtLeast: 85.58 };
    expect(gapText(coarse, null, 'mm').proof).toBe('proven ≥ 85.5 mm');
    expect(gapText(of(['tieRod', 'wheel'], -3), null, 'inch')).toMatchObject({
      state: 'touch',
      figure: '−0.12 in',
      words: 'touch',
    });
  });
});
