/** Units of the measures in files: the geometry contract's own, whatever a page shows. */
import type { Sense, UnitKind } from './rows/row.ts';

export const FILE_UNITS: Readonly<Record<UnitKind, string>> = {
  degree: 'deg',
  millimetre: 'mm',
  distance: 'mm',
  degreePerMm: 'deg/mm',
  degreePerRackMm: 'deg/mm',
  ratio: '1',
  perMm: '1/mm',
  percent: '%',
  newton: 'N',
  newtonPerMm: 'N/mm',
  hertz: 'Hz',
};

function bare(words: string): string {
  return words.replace(/ ?\{\}/, '').trim();
}

/** The head of a column: "camber [deg; + top leans out, - top leans in]"; `whose` follows the name. */
export function columnHead(
  {
    label,
    kind,
    sense,
  }: { readonly label: string; readonly kind: UnitKind; readonly sense?: Sense },
  whose = '',
): string {
  const signs = sense === undefined ? '' : `; + ${bare(sense.positive)}, - ${bare(sense.negative)}`;
  return `${label}${whose} [${FILE_UNITS[kind]}${signs}]`;
}

/** A field of a CSV line (RFC 4180). */
export function csvField(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A table as the text of a CSV file, its heads being the first line. */
export function csvText(lines: readonly (readonly string[])[]): string {
  return `${lines.map((line) => line.map(csvField).join(',')).join('\n')}\n`;
}
