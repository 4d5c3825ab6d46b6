/** Numbers that are shown with their default where the file leaves them out. */
import type { Model } from '../../../solver/index.ts';
import {
  camAngle,
  hubAngle,
  rideTravel,
  shimThickness,
  tieRodDiameter,
  wheelSpacer,
  wheelThickness,
} from '../../../solver/model/defaults.ts';
import { loadedRadius } from '../../../solver/model/tyre.ts';

export const DEFAULTED: readonly {
  path: string;
  read: (model: Model) => number;
  isShown: (model: Model) => boolean;
}[] = [
  { path: 'tieRod.diameter', read: ({ tieRod }) => tieRodDiameter(tieRod), isShown: () => true },
  {
    path: 'tieRod.turns',
    read: ({ tieRod }) => tieRod.turns ?? 0,
    isShown: ({ tieRod }) => tieRod.pitch !== undefined,
  },
  { path: 'hub.camber', read: ({ hub }) => hubAngle(hub.camber), isShown: () => true },
  { path: 'hub.toe', read: ({ hub }) => hubAngle(hub.toe), isShown: () => true },
  { path: 'wheel.spacer', read: ({ wheel }) => wheelSpacer(wheel), isShown: () => true },
  { path: 'wheel.thickness', read: ({ wheel }) => wheelThickness(wheel), isShown: () => true },
  {
    path: 'tyre.loadedRadius',
    read: ({ tyre, wheel }) => loadedRadius(tyre, wheel),
    isShown: () => true,
  },
  { path: 'travel.ride', read: ({ travel }) => rideTravel(travel), isShown: () => true },
  ...(['lowerArm', 'upperArm'] as const).flatMap((arm) =>
    (['frontCam', 'rearCam'] as const).map((cam) => ({
      path: `${arm}.${cam}.angle`,
      read: (model: Model) => camAngle(model[arm][cam]),
      isShown: (model: Model) => model[arm][cam] !== undefined,
    })),
  ),
  ...(['frontShim', 'rearShim'] as const).map((shim) => ({
    path: `upperArm.${shim}.thickness`,
    read: (model: Model) => shimThickness(model.upperArm[shim]),
    isShown: (model: Model) => model.upperArm[shim] !== undefined,
  })),
];
