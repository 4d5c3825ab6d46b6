/** Both front wheels over jets: the formulas of measures/axle.ts. */
import { solve } from '../corner.ts';
import { LEAST_TURN } from '../measures/axle.ts';
import { DEGREES_PER_RADIAN } from '../units.ts';
import type { DesignInputs } from './design.ts';
import type { Jet } from './jets.ts';
import { type Motion, motionOf } from './motion.ts';
import type { Sensitivities } from './sensitivity.ts';
import { toeOf } from './wheel.ts';
import type { Write } from './write.ts';

/** What the axle measures are made of: both steer angles, rad to the left; kingpin track and scrub radius of the set pose, mm. */
interface AxleJets {
  readonly left: Jet;
  readonly right: Jet;
  readonly kingpinTrack: Jet;
  readonly setScrub: Jet;
}

/** Inner and outer steer, Ackermann, turning circle; nothing where the wheels stand nearly straight ahead. */
function writeAxle(
  { model, jets, number }: DesignInputs,
  { left, right, kingpinTrack, setScrub }: AxleJets,
  write: Write,
): void {
  const [a, b] = [jets.value(left), jets.value(right)];
  const turn = a + b < 0 ? -1 : 1;
  const [inner, outer] = (turn > 0 ? [left, right] : [right, left]).map((angle) =>
    jets.scale(angle, Math.sign(jets.value(angle)) || 1),
  ) as [Jet, Jet];
  if (!(Math.abs(jets.value(inner)) * DEGREES_PER_RADIAN >= LEAST_TURN)) return;
  write('innerSteer', inner, DEGREES_PER_RADIAN);
  write('outerSteer', outer, DEGREES_PER_RADIAN);
  if (model.vehicle === undefined) return;
  const wheelbase = number('vehicle.wheelbase');
  const [sine, cosine] = [jets.sine(inner), jets.cosine(inner)];
  const wider = jets.divide(jets.multiply(sine, kingpinTrack), wheelbase);
  const ideal = jets.angle(sine, jets.add(cosine, wider));
  const less = jets.subtract(inner, outer);
  write('ackermann', jets.divide(less, jets.subtract(inner, ideal)), 100);
  const radius = jets.add(jets.divide(wheelbase, jets.sine(outer)), setScrub);
  write('turningCircle', radius, 2);
}

/** Toe of the right wheel seen in the mirror, rad; null out of its reach. */
function mirroredToe(
  { design, constants, axle }: Sensitivities,
  travel: number,
  rack: number,
): Jet | null {
  const { jets } = design;
  const [x, y, z] = constants.rackDirection;
  if (solve(axle.mirrored, axle.pose, travel, -rack) !== 'reached') return null;
  jets.order = 0;
  const course = { travel, rack: -rack, perTravel: 0, perRack: 0 };
  const mirrored = { ...constants, rackDirection: [-x, y, -z] as const };
  const motion = motionOf(jets, mirrored, axle.pose, course);
  return motion === null ? null : toeOf(jets, motion);
}

/** Writes the axle's measures of a pose; nothing where the set pose or the other wheel is out of reach. */
export function writeBothWheels(
  made: Sensitivities,
  motion: Motion,
  at: { readonly travel: number; readonly rack: number },
  write: Write,
): void {
  const { design, set } = made;
  const { jets } = design;
  if (set === null) return;
  const toe = jets.now(toeOf(jets, motion));
  const right = mirroredToe(made, at.travel, at.rack);
  if (right === null) return;
  const steers = { left: jets.subtract(set.toe, toe), right: jets.subtract(right, set.toe) };
  const { kingpinTrack, scrub } = set;
  writeAxle(design, { ...steers, kingpinTrack, setScrub: scrub }, write);
}
