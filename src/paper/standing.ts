/** What every sheet says at its end: signs, what was measured, what was assumed, cautions. */
import type { Model } from '../../solver/index.ts';
import { tieRodDiameter, tubeDiameter, wheelThickness } from '../../solver/model/defaults.ts';
import { loadedRadius } from '../../solver/model/tyre.ts';
import { type Block, heading, list } from './block.ts';
import { lengthText } from './figureWords.ts';
import type { PaperSource } from './source.ts';

export const SIGNS: readonly string[] = [
  'Left front corner; the right one is its mirror image. Travel: + wheel up (bump), − wheel down (droop), from the pose the points were measured in. Rack: + to the left.',
  'Camber: + top leans out, − top leans in. Toe: + front edge in, − front edge out, of one wheel. Caster: + the steering axis leans back at the top. Kingpin inclination: + it leans in at the top.',
];

function measured(model: Model): string[] {
  const { tolerance = {} } = model;
  const { default: all, ...own } = tolerance;
  const count = Object.keys(own).length;
  if (all === undefined && count === 0) {
    return [
      'Measured: the points, as the model states them. No ± is stated: they are taken as exact, which no tape is.',
    ];
  }
  const general =
    all === undefined ? '' : ` ±${all} mm on every coordinate (one standard uncertainty)`;
  const others =
    count === 0 ? '' : `${all === undefined ? ' ±' : ', and'} of its own for ${count} of them`;
  return [`Measured: the points, as the model states them, with${general}${others}.`];
}

function shapeDefaults(source: PaperSource): string[] {
  const { model, settings } = source;
  const say = (mm: number): string => lengthText(mm, settings.unit);
  const { wheel, tyre, tieRod } = model;
  const tubes = (['lowerArm', 'upperArm'] as const)
    .filter((arm) => model[arm].tubeDiameter === undefined)
    .map(
      (arm) =>
        `${arm === 'lowerArm' ? 'lower' : 'upper'} arm’s tubes Ø ${say(tubeDiameter(model, arm))}`,
    );
  return [
    ...tubes,
    ...(tieRod.diameter === undefined && tieRod.profile === undefined
      ? [`tie rod Ø ${say(tieRodDiameter(tieRod))}`]
      : []),
    ...(wheel.section === undefined ? ['wheel’s barrel by its size'] : []),
    ...(wheel.thickness === undefined ? [`wheel’s metal ${say(wheelThickness(wheel))} thick`] : []),
    ...(tyre.loadedRadius === undefined
      ? [`loaded radius ${say(loadedRadius(tyre, wheel))} (0.96 of half the diameter)`]
      : []),
  ];
}

function poseDefaults({ model }: PaperSource): string[] {
  const { hub, travel, lowerArm, upperArm, tieRod, steering } = model;
  const joints = [
    ...(lowerArm.housingAxis === undefined ? ['lower ball joint'] : []),
    ...(upperArm.housingAxis === undefined ? ['upper ball joint'] : []),
    ...(tieRod.housingAxis === undefined ? ['tie rod end'] : []),
  ];
  return [
    ...(hub.camber === undefined ? ['camber 0° as measured'] : []),
    ...(hub.toe === undefined ? ['toe 0° as measured'] : []),
    ...(travel.ride === undefined ? ['measured standing at ride height'] : []),
    ...(joints.length === 0 ? [] : [`${joints.join(', ')} centred as measured`]),
    ...(steering?.limit === undefined ? ['no steering limit stated: straight ahead only'] : []),
  ];
}

function assumed(source: PaperSource): string[] {
  const all = [...poseDefaults(source), ...shapeDefaults(source)];
  return all.length === 0
    ? ['Assumed: nothing in place of a number; every one that counts here is stated.']
    : [`Assumed, because the model does not state it: ${all.join('; ')}.`];
}

const SET_BY: Readonly<Record<string, string>> = {
  'travel.bump': 'end of the travel the model states',
  'travel.droop': 'end of the travel the model states',
  'travel.ride': 'as the vehicle stands',
  'stops.bump': 'where the model says that it touches',
};

/** What sets a height of the cycle, in words. */
export function setByWords(because: string): string {
  return SET_BY[because] ?? because;
}

export const CAUTIONS: readonly string[] = [
  'Rigid parts, unloaded: no bush compliance, no joint play, no tyre deflection. The strength of arms, welds and tabs is not checked. Mock up and measure again on the vehicle before cutting.',
  'Stands under the frame, wheels chocked, stored spring energy released, nobody under a jack. Check stick-on weights, hoses and wires by hand at both locks and at full travel.',
  'Tighten by the vehicle maker’s own torque figures, rubber bushes at ride height; fit new cotter pins and jam nuts; check wheel nuts again after 50–100 miles. Local vehicle codes and licensed alignment come first.',
];

/** The end of a sheet. */
export function standing(source: PaperSource): Block[] {
  return [
    heading('Signs, what was measured, what was assumed'),
    list([...SIGNS, ...measured(source.model), ...assumed(source)]),
    heading('Cautions'),
    list(CAUTIONS),
  ];
}
