/** Tyres: the size written on the sidewall, the dimensions it stands for, and the section that is swept. Lengths mm. */
import { MM_PER_INCH } from '../units.ts';
import { LOADED_PART } from './defaults.ts';
import type { SectionPoint, Tyre, Wheel } from './model.ts';
import { FLANGE_HEIGHT, specifiedRimDiameter } from './rim.ts';

/** A size in millimetres and per cent, such as LT285/75R16. */
export interface MetricSize {
  readonly form: 'metric';
  readonly service: 'P' | 'LT' | '';
  /** Section width on the measuring rim, mm. */
  readonly width: number;
  /** Section height as per cent of the width. */
  readonly aspect: number;
  readonly rimDiameterCode: number;
}

/** A size in inches, such as 35x12.50R17LT. */
export interface FlotationSize {
  readonly form: 'flotation';
  readonly service: 'LT' | '';
  /** Nominal overall diameter, inches. */
  readonly overallDiameter: number;
  /** Nominal section width, inches. */
  readonly width: number;
  readonly rimDiameterCode: number;
}

export type TyreSize = MetricSize | FlotationSize;

export type TyreSizeResult =
  | { readonly ok: true; readonly size: TyreSize }
  | { readonly ok: false; readonly wanted: string };

const NUMBER = String.raw`(\d+(?:\.\d+)?)`;
const METRIC = new RegExp(`^(P|LT)?${NUMBER}/${NUMBER}Z?R${NUMBER}(LT)?$`);
const FLOTATION = new RegExp(`^${NUMBER}X${NUMBER}[R-]${NUMBER}(LT)?$`);
// Without R or hyphen only a space keeps the width and the rim apart.
const SPACED_FLOTATION = /^(.*X.*\d)\s+(\d+(?:\.\d+)?\s*(?:LT)?)$/;

const EXAMPLES = 'such as 265/70R17, LT285/75R16 or 35x12.50R17LT';

/** No tyre's number is longer; a longer text is not searched. */
const LONGEST_SIZE = 60;

/** What a text that is no size lacks, in plain words. */
function missing(compact: string): string {
  if (compact === '') return `a tyre size ${EXAMPLES}`;
  if (/^[\d.]+$/.test(compact)) return `a tyre size with width, aspect and rim, ${EXAMPLES}`;
  if (/\/\d[\d.]*$/.test(compact))
    return `a tyre size with R and the rim's code at its end, ${EXAMPLES}`;
  if (compact.includes('/') && !compact.includes('R'))
    return `a tyre size with R before the rim's code, ${EXAMPLES}`;
  if (/X[\d.]+$/.test(compact))
    return `a tyre size with R or - and the rim's code at its end, ${EXAMPLES}`;
  return `a tyre size ${EXAMPLES}`;
}

/**
 * A tyre size from its text: `[P|LT]W/A[Z]R D[LT]` or `ODxW[R|-]D[LT]`, spaces and case ignored, decimals allowed. What is no such
 * size is answered with what is wanted, in words for a message.
 */
export function parseTyreSize(text: string): TyreSizeResult {
  if (text.length > LONGEST_SIZE) return { ok: false, wanted: `a tyre size ${EXAMPLES}` };
  const upper = text.toUpperCase().replace(/×/g, 'X').trim();
  const compact = upper.replace(SPACED_FLOTATION, '$1-$2').replace(/\s+/g, '');
  const metric = METRIC.exec(compact);
  const flotation = metric
    ? null
    : (FLOTATION.exec(upper.replace(/\s+/g, '')) ?? FLOTATION.exec(compact));
  const [first, second, code] = (metric?.slice(2, 5) ?? flotation?.slice(1, 4) ?? []).map(Number);
  if (first === undefined || second === undefined || code === undefined) {
    return { ok: false, wanted: missing(compact) };
  }
  if (Math.min(first, second, code) <= 0 || Math.max(first, second, code) >= 1e5) {
    return { ok: false, wanted: 'a tyre size whose numbers are all above 0 and below 1e5' };
  }
  const rimDiameterCode = code;
  if (metric) {
    const service = metric[1] ?? metric[5] ?? '';
    return {
      ok: true,
      size: {
        form: 'metric',
        service: service as MetricSize['service'],
        width: first,
        aspect: second,
        rimDiameterCode,
      },
    };
  }
  const service = flotation?.[4] === undefined ? '' : 'LT';
  return {
    ok: true,
    size: { form: 'flotation', service, overallDiameter: first, width: second, rimDiameterCode },
  };
}

export interface TyreDimensions {
  /** Ø, mm, unloaded. */
  readonly overallDiameter: number;
  /** S, mm, on the wheel the tyre is mounted on. */
  readonly sectionWidth: number;
  /** Inch code in the size; absent when the file states the dimensions instead. */
  readonly rimDiameterCode?: number;
  readonly form: 'metric' | 'flotation' | 'stated';
}

/** Change of section width per change of rim width: K of UN Regulation 30, paragraph 6.1.1.1. */
const WIDTH_PER_RIM_WIDTH = 0.4;

/**
 * Width of the measuring rim as a part of the nominal section width: 0.70 from 50-series up, 0.85 below. Derived from published
 * tables of sizes and their measured rims; ISO 4000-1 and ETRTO list it by series too, from memory.
 */
function measuringRimPart(aspect: number): number {
  return aspect >= 50 ? 0.7 : 0.85;
}

/**
 * Dimensions of one size on a rim of `rimWidth`, mm. Metric: Ø = rim + 2·width·aspect (UN Regulation 30, 6.1.2, from memory) and
 * S = S1 + 0.4·(A − A1) (6.1.1.1). Flotation: both nominal as written, whatever the rim's width; such tyres often measure less.
 */
export function sizeDimensions(size: TyreSize, rimWidth: number): TyreDimensions {
  const { form, rimDiameterCode } = size;
  if (size.form === 'flotation') {
    return {
      overallDiameter: size.overallDiameter * MM_PER_INCH,
      sectionWidth: size.width * MM_PER_INCH,
      rimDiameterCode,
      form,
    };
  }
  const measuringRim = measuringRimPart(size.aspect) * size.width;
  return {
    overallDiameter: rimDiameterCode * MM_PER_INCH + (2 * size.width * size.aspect) / 100,
    sectionWidth: size.width + WIDTH_PER_RIM_WIDTH * (rimWidth - measuringRim),
    rimDiameterCode,
    form,
  };
}

/**
 * Dimensions of a model's tyre on its wheel, mm; a stated diameter and width are taken as they stand. Throws for a tyre that has
 * neither a readable size nor both dimensions, which no model that was parsed has.
 */
export function tyreDimensions(tyre: Tyre, wheel: Wheel): TyreDimensions {
  const { size, diameter, width } = tyre;
  if (diameter !== undefined && width !== undefined) {
    return { overallDiameter: diameter, sectionWidth: width, form: 'stated' };
  }
  const parsed = parseTyreSize(size ?? '');
  if (!parsed.ok) throw new Error(`A tyre without dimensions: wanted ${parsed.wanted}`);
  return sizeDimensions(parsed.size, wheel.width * MM_PER_INCH);
}

/** Distance from wheel centre to ground, mm: the file's, or else 0.96 of half the overall diameter (common practice). */
export function loadedRadius(tyre: Tyre, wheel: Wheel): number {
  return tyre.loadedRadius ?? (LOADED_PART * tyreDimensions(tyre, wheel).overallDiameter) / 2;
}

/** How much lower than the tread's middle its shoulder lies, mm, and where both end, as parts of the section width. */
const SHOULDER_DROP = 8;
const SHOULDER_PART = 0.42;
const TREAD_PART = 0.3;

/** The tyre's section as a closed polygon of [s, ρ], from the inner bead over the tread to the outer bead; the last point joins the first. */
export function tyreSection(tyre: Tyre, wheel: Wheel): readonly SectionPoint[] {
  const { overallDiameter, sectionWidth } = tyreDimensions(tyre, wheel);
  const lip = specifiedRimDiameter(wheel.diameter) / 2 + FLANGE_HEIGHT;
  const tread = overallDiameter / 2;
  const outer: readonly SectionPoint[] = [
    [TREAD_PART * sectionWidth, tread],
    [SHOULDER_PART * sectionWidth, tread - SHOULDER_DROP],
    [sectionWidth / 2, (lip + tread) / 2],
    [(wheel.width * MM_PER_INCH) / 2, lip],
  ];
  const inner = outer.map(([s, radius]): SectionPoint => [-s, radius]).reverse();
  return [...inner, ...outer];
}
