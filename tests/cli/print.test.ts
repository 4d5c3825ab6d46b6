/** The words beside a signed number say what a person would see on the wheel. */
import { describe, expect, test } from 'vitest';
import { assemble, type Model, poseReport } from '../../solver/index.ts';
import { poseTable, rounded } from '../../src/cli/print.ts';
import { FULL_MODEL } from '../support/full-model.ts';

/** The full model without its settings, with some parts changed. */
function table(parts: Partial<Model>, travel = 0, rack = 0): string {
  const { frontCam: _, rearCam: __, ...lowerArm } = FULL_MODEL.lowerArm;
  const { frontCam: ___, rearShim: ____, ...upperArm } = FULL_MODEL.upperArm;
  const { turns: _____, ...tieRod } = FULL_MODEL.tieRod;
  const model = { ...FULL_MODEL, lowerArm, upperArm, tieRod, ...parts };
  return poseTable(model.name, { ...poseReport(assemble(model), travel, rack) });
}

/** The words of one line of the table. */
function words(text: string, label: string): string {
  const line = text.split('\n').find((each) => each.startsWith(`  ${label}  `));
  return (
    line
      ?.split(/ {2,}/)
      .slice(3)
      .join(' ')
      .replace(/^(deg|mm|%) /, '') ?? 'no such line'
  );
}

const { hub, wheel, upperArm } = FULL_MODEL;

describe('signs in words', () => {
  test.each([
    ['camber', { hub: { ...hub, camber: 2 } }, 'top leans out'],
    ['camber', { hub: { ...hub, camber: -2 } }, 'top leans in'],
    ['toe', { hub: { ...hub, toe: 1 } }, 'front edge in'],
    ['toe', { hub: { ...hub, toe: -1 } }, 'front edge out'],
    ['caster', { upperArm: { ...upperArm, ballJoint: [-24, 708, 226] } }, 'axis leans back'],
    ['caster', { upperArm: { ...upperArm, ballJoint: [40, 708, 226] } }, 'axis leans forward'],
    [
      'kingpin inclination',
      { upperArm: { ...upperArm, ballJoint: [-24, 708, 226] } },
      'axis leans in',
    ],
    [
      'kingpin inclination',
      { upperArm: { ...upperArm, ballJoint: [-24, 800, 226] } },
      'axis leans out',
    ],
    ['scrub radius', { wheel: { ...wheel, offset: -60 } }, 'contact outboard of the axis'],
    ['scrub radius', { wheel: { ...wheel, offset: 120 } }, 'contact inboard of the axis'],
    ['spindle offset', { wheel: { ...wheel, offset: -60 } }, 'centre outboard of the axis'],
  ] as const)('%s of %j', (label, parts, wanted) => {
    expect(words(table(parts as unknown as Partial<Model>), label)).toBe(wanted);
  });

  test.each([
    ['travel', 20, 0, 'wheel up (bump)'],
    ['travel', -20, 0, 'wheel down (droop)'],
    ['rack', 0, 20, 'to the left'],
    ['rack', 0, -20, 'to the right'],
    ['steer angle', 0, 20, 'steers left'],
    ['steer angle', 0, -20, 'steers right'],
  ] as const)('%s at travel %d, rack %d', (label, travel, rack, wanted) => {
    expect(words(table({ hub }, travel, rack), label)).toBe(wanted);
  });

  test('nothing is said of a number that reads as zero', () => {
    expect(words(table({ hub: { face: hub.face } }), 'toe')).toBe('');
    expect(words(table({ hub: { ...hub, toe: 0.0004 } }), 'toe')).toBe('');
  });
});

test.each([
  [-0.0004, 3, '0.000'],
  [-0.0006, 3, '-0.001'],
  [12, 0, '12'],
] as const)('%d to %d digits is %s', (value, digits, text) => {
  expect(rounded(value, digits)).toBe(text);
});
