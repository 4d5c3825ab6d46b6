/** Ride height: a lift or a drop as one number, and the bench that follows it. */
import type { Model } from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';
import type { DocumentStore } from './document.ts';
import type { Inputs } from './inputs.ts';

/** The model lifted by `lift` mm: the wheel stands that much lower in the body's frame. */
export function liftedBy(model: Model, lift: number): Model {
  if (liftOf(model) === lift) return model;
  return { ...model, travel: { ...model.travel, ride: lift === 0 ? 0 : -lift } };
}

/** How much the model is lifted from its design pose, mm; negative for a drop. */
export function liftOf(model: Model): number {
  return 0 - rideTravel(model.travel);
}

/** [greatest drop, greatest lift] a slider offers, mm: as far as the model's travel goes. */
export function liftRange(model: Model): readonly [number, number] {
  return [-model.travel.bump, model.travel.droop];
}

/** Keeps a bench that stands at ride height there when the ride height changes, by a slider, undo or another model. */
export function followRide(documentStore: DocumentStore, inputs: Inputs): () => void {
  return documentStore.subscribe((state, before) => {
    const [now, then] = [rideTravel(state.model.travel), rideTravel(before.model.travel)];
    if (now !== then && inputs.getState().travel === then) inputs.setTravel(now);
  });
}
