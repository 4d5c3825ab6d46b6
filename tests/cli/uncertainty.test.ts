/** `armscribe uncertainty`: what it prints is what the solver answers, and every way it can be refused. */
import { describe, expect, test } from 'vitest';
import { GRADES, knowledgeOf, measureAgain, monteCarlo, withGrade } from '../../solver/index.ts';
import { armscribe } from '../support/armscribe.ts';
import { shipped } from '../support/models.ts';

const TALL = 'models/tall-knuckle-crossover.json';
const PLANAR = 'models/planar-equal-arms.json';
const model = shipped('tall-knuckle-crossover');

interface Printed {
  readonly travel: number;
  readonly inputs: readonly { readonly key: string; readonly sigma: number }[];
  readonly answers: Readonly<
    Record<
      string,
      { readonly value: number; readonly uncertainty: number; readonly slopes: number[] }
    >
  >;
  readonly drawn?: unknown;
}

describe('uncertainty', () => {
  test('--json holds the solver’s own numbers of the set pose', () => {
    const { status, out, err } = armscribe('uncertainty', TALL, '--json');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const printed = JSON.parse(out) as Printed;
    const wanted = knowledgeOf(model);
    expect(printed.travel).toBe(model.travel.ride);
    expect(printed.inputs.map(({ key }) => key)).toEqual(wanted.inputs.map(({ key }) => key));
    expect(printed.inputs.map(({ sigma }) => sigma)).toEqual([...wanted.sigmas]);
    for (const [key, answer] of Object.entries(wanted.answers!)) {
      expect(printed.answers[key]).toMatchObject({
        value: answer.value + 0,
        uncertainty: answer.uncertainty,
      });
      expect(printed.answers[key]!.slopes).toHaveLength(wanted.inputs.length);
    }
    expect(printed.drawn).toBeUndefined();
  });

  test('tells what spoils a measure most, and what counts as exact', () => {
    const { out } = armscribe('uncertainty', TALL);
    const wanted = knowledgeOf(model);
    const [worst] = measureAgain(wanted, wanted.answers!.caster!).points;
    const line = out.split('\n').find((each) => each.startsWith('  caster '))!;
    expect(line).toContain(`${worst!.label} ${(100 * worst!.share).toFixed(0)} %`);
    const { value, uncertainty } = wanted.answers!.caster!;
    expect(line).toMatch(new RegExp(` ${value.toFixed(2)} +${uncertainty.toFixed(2)} deg`));
    expect(out).toContain('± is one standard uncertainty: it holds in about two of three cases');
    expect(out).toContain('Not stated, taken as exact: Tie rod, pitch, a turn; Wheel, offset');
    expect(out).toMatch(/\n {2}steer angle +0\.0+ +exact deg\n/);
    expect(armscribe('uncertainty', PLANAR).out).toContain(
      'The model states no uncertainty: every number counts as exact.',
    );
  });

  test('takes a grade for what is not stated, and draws corners', () => {
    const planar = shipped('planar-equal-arms');
    const { out } = armscribe('uncertainty', PLANAR, '--grade', 'tape', '--draws', '300', '--json');
    const printed = JSON.parse(out) as Printed;
    const taped = withGrade(planar, GRADES[0]!);
    expect(printed.answers['caster']!.uncertainty).toBe(
      knowledgeOf(taped).answers!.caster!.uncertainty,
    );
    expect(printed.drawn).toEqual(JSON.parse(JSON.stringify(monteCarlo(taped, { draws: 300 }))));
    const table = armscribe('uncertainty', TALL, '--draws', '300').out;
    expect(table).toContain('Checked with 300 corners drawn at random.');
    expect(table.split('\n').find((each) => each.startsWith('  caster '))).toContain(' agrees ');
  });

  test('says that a pose is out of reach, with status 1', () => {
    const { status, out, err } = armscribe('uncertainty', TALL, '--travel', '900');
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toMatch(/^Not reached: \w+ cannot be kept/);
    expect(
      JSON.parse(armscribe('uncertainty', TALL, '--travel', '900', '--json').out),
    ).toMatchObject({
      reached: false,
    });
  });

  test.each([
    [['--draws', '5'], '--draws: found "5", wanted a whole number from 100 to 1000000'],
    [['--draws', '1e3'], '--draws: found "1e3", wanted a whole number from 100 to 1000000'],
    [['--grade', 'eye'], '--grade: found "eye", wanted one of tape, plumbBob, bench'],
    [['--rack', 'x'], '--rack: found "x", wanted a number of mm smaller than 1e5 in size'],
  ])('%j is refused', (words, line) => {
    const { status, out, err } = armscribe('uncertainty', TALL, ...words);
    expect({ status, out, err }).toEqual({
      status: 2,
      out: '',
      err: `armscribe uncertainty: ${line}\n`,
    });
  });
});
