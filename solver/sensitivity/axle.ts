/** Both front wheels over jets: the formulas of measures/axle.ts. */
import { LEAST_TURN } from '../measures/axle.ts';
import { DEGREES_PER_RADIAN } from '../units.ts';
import type { DesignInputs } from './design.ts';
import type { Jet } from './jets.ts';
import type { Write } from './write.ts';

/** What the axle measures are made of: both steer angles, rad to the left; kingpin track and scrub radius of the set pose, mm. */
export interface AxleJets {
  readonly left: Jet;
  readonly right: Jet;
  readonly kingpinTrack: Jet;
  readonly setScrub: Jet;
}

/** Inner and outer steer, Ackermann, turning circle; nothing where the wheels stand nearly straight ahead. */
export function writeAxle(
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
