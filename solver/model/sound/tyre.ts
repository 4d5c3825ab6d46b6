/** Whether tyre, rim and loaded radius belong together. */
import type { Model } from '../model.ts';
import { quoted } from '../read/failure.ts';
import { refuse, refuseValue } from '../read/reader.ts';
import { specifiedRimDiameter } from '../rim.ts';
import { parseTyreSize, tyreDimensions } from '../tyre.ts';

function checkForm({ tyre, wheel }: Model): void {
  const { size, diameter, width } = tyre;
  if (size === undefined) {
    if (diameter === undefined && width === undefined) {
      refuse('tyre.size', 'nothing', 'a tyre size, or diameter and width (mm)');
    }
    if (diameter === undefined)
      refuse('tyre.diameter', 'nothing', 'the diameter that goes with width (mm)');
    if (width === undefined)
      refuse('tyre.width', 'nothing', 'the width that goes with diameter (mm)');
    return;
  }
  if (diameter !== undefined || width !== undefined) {
    const stated = diameter === undefined ? 'width' : 'diameter';
    refuse(`tyre.${stated}`, `a ${stated} beside size`, 'either size, or diameter and width');
  }
  const parsed = parseTyreSize(size);
  if (!parsed.ok) refuseValue('tyre.size', size, parsed.wanted);
  else if (parsed.size.rimDiameterCode !== wheel.diameter) {
    refuse(
      'tyre.size',
      `${quoted(size)}, for a rim of code ${parsed.size.rimDiameterCode}`,
      `a size for wheel.diameter, ${wheel.diameter}`,
    );
  }
}

/** Refuses a tyre that states too little, too much, or what cannot be on its wheel. */
export function checkTyre(model: Model): void {
  checkForm(model);
  const { tyre, wheel } = model;
  const rim = Number(specifiedRimDiameter(wheel.diameter).toFixed(3));
  const overall = Number(tyreDimensions(tyre, wheel).overallDiameter.toFixed(3));
  const key = tyre.size === undefined ? 'tyre.diameter' : 'tyre.size';
  if (overall <= rim) {
    refuse(key, `an overall diameter of ${overall} mm`, `more than the rim's ${rim} mm`);
  }
  const { loadedRadius } = tyre;
  if (loadedRadius !== undefined && (loadedRadius < rim / 2 || loadedRadius > overall / 2)) {
    refuse(
      'tyre.loadedRadius',
      String(loadedRadius),
      `from the rim's radius, ${rim / 2} mm, to the tyre's, ${overall / 2} mm`,
    );
  }
}
