/** A drawing as DXF, release 12 in ASCII, in millimetres at full size: what every drawing program and cutting table reads. */
import type { Drawing, Layer, Mark } from './marks.ts';

/** [line type, colour number]: 7 is black on white. */
const LAYERS: Readonly<Record<Layer, readonly [string, number]>> = {
  outline: ['CONTINUOUS', 7],
  centre: ['CENTER', 1],
  dimension: ['CONTINUOUS', 8],
  sheet: ['CONTINUOUS', 8],
};

type Pair = readonly [code: number, value: string | number];

/** Release 12 knows ASCII alone: signs outside it go as their own escapes or are spelled. */
function inAscii(text: string): string {
  return text
    .replace(/°/g, '%%d')
    .replace(/Ø/g, '%%c')
    .replace(/−/g, '-')
    .replace(/’/g, "'")
    .replace(/\s+/g, ' ')
    .replace(
      /[^ -~]/g,
      (sign) => `\\U+${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`,
    );
}

function number(value: number): string {
  return String(Math.round(value * 1e6) / 1e6);
}

function xy(code: number, [x, y]: readonly [number, number]): Pair[] {
  return [
    [code, number(x)],
    [code + 10, number(y)],
  ];
}

function entity(mark: Mark): Pair[] {
  const layer: Pair = [8, mark.layer.toUpperCase()];
  if (mark.kind === 'circle') {
    return [[0, 'CIRCLE'], layer, ...xy(10, mark.at), [40, number(mark.radius)]];
  }
  if (mark.kind === 'stroke') {
    return [
      [0, 'POLYLINE'],
      layer,
      [66, 1],
      ...xy(10, [0, 0]),
      [70, 0],
      ...mark.spots.flatMap((spot): Pair[] => [[0, 'VERTEX'], layer, ...xy(10, spot)]),
      [0, 'SEQEND'],
      layer,
    ];
  }
  const across = { start: 0, middle: 1, end: 2 }[mark.anchor];
  return [
    [0, 'TEXT'],
    layer,
    ...xy(10, mark.at),
    [40, number(mark.height)],
    [1, inAscii(mark.text)],
    [50, number(mark.turn)],
    [72, across],
    ...(across === 0 ? [] : xy(11, mark.at)),
  ];
}

function table(name: string, entries: readonly (readonly Pair[])[]): Pair[] {
  return [[0, 'TABLE'], [2, name], [70, entries.length], ...entries.flat(), [0, 'ENDTAB']];
}

const LINE_TYPES: readonly (readonly Pair[])[] = [
  [
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, 64],
    [3, 'Solid line'],
    [72, 65],
    [73, 0],
    [40, 0],
  ],
  [
    [0, 'LTYPE'],
    [2, 'CENTER'],
    [70, 64],
    [3, 'Centre line'],
    [72, 65],
    [73, 4],
    [40, 10.5],
    [49, 6],
    [49, -1.5],
    [49, 1.5],
    [49, -1.5],
  ],
];

export function drawingDxf({ marks, width, height }: Drawing): string {
  const layers = Object.entries(LAYERS).map(([name, [type, colour]]): Pair[] => [
    [0, 'LAYER'],
    [2, name.toUpperCase()],
    [70, 64],
    [62, colour],
    [6, type],
  ]);
  const pairs: Pair[] = [
    [999, 'Millimetres, full size'],
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, 4],
    [9, '$EXTMIN'],
    ...xy(10, [0, 0]),
    [9, '$EXTMAX'],
    ...xy(10, [width, height]),
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...table('LTYPE', LINE_TYPES),
    ...table('LAYER', layers),
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...marks.flatMap(entity),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return `${pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}`).join('\r\n')}\r\n`;
}
