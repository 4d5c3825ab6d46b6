/** A drawing's sheet: its views, its notes, its title block and its check scale, to scale 1:1. */
import { type Drawing, LETTER, type Mark, placed, stroke, words } from './marks.ts';
import { laidOut, type Views } from './views.ts';

/** What stands in the title block. */
export interface Title {
  readonly key: string;
  readonly part: string;
  readonly model: string;
  readonly hand: 'left' | 'right';
  readonly unit: string;
  /** As it is to be printed. */
  readonly date: string;
}

const MARGIN = 12;
const LINE = 6.5;
const NOTE = 3.5;
const LEAST_WIDTH = 250;

const CAUTIONS = [
  'Centres only: bushes, cups and rod ends are not in the model. Corners of bent tubes are the centrelines’; the bend’s radius is the bender’s.',
  'Rigid geometry. Strength of tubes, welds and tabs is not checked. Mock up and cycle before welding; local vehicle codes and part makers’ limits come first.',
];

/** Bars of a stated length, to be measured on the print before anything is cut. */
export function checkScale(): Mark[] {
  const bar = (length: number, y: number, said: string, parts: number): Mark[] => [
    stroke('sheet', [0, y], [length, y]),
    ...Array.from({ length: parts + 1 }, (_, at) => {
      const x = (length * at) / parts;
      const high = at === 0 || at === parts ? 4 : 2;
      return stroke('sheet', [x, y], [x, y + high]);
    }),
    words('sheet', [length + 3, y], said, NOTE),
  ];
  return [...bar(100, 9, '100 mm', 10), ...bar(101.6, 0, '4 in', 4)];
}

function titleBlock({ part, model, hand, unit, date }: Title): string[] {
  return [
    `${part}, ${hand} hand`,
    model,
    `Scale 1:1, third-angle projection. Lengths ${unit}, angles degrees. ${date}`,
  ];
}

/** Breaks a line of words to a width, mm. */
function broken(text: string, width: number, height: number): string[] {
  const most = Math.max(20, Math.floor(width / (LETTER * height)));
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > most) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

/** A sheet that holds the views at full size, with what they cannot say under them. */
export function drawingSheet(views: Views, notes: readonly string[], title: Title): Drawing {
  const { marks, width, height } = laidOut(views, title.hand === 'left' ? 1 : -1);
  const wide = Math.max(width, LEAST_WIDTH);
  const lines = [...notes, ...CAUTIONS].flatMap((note) => broken(note, wide, NOTE));
  const head = titleBlock(title).flatMap((line) => broken(line, wide, 5));
  const written: Mark[] = [
    ...head.map((line, at) => words('sheet', [0, -(at + 1) * 8], line, at === 0 ? 5 : 4)),
    ...lines.map((line, at) =>
      words('sheet', [0, -head.length * 8 - (at + 1.5) * LINE], line, NOTE),
    ),
  ];
  const under = head.length * 8 + (lines.length + 2) * LINE;
  const scaleRoom = 20;
  const whole = under + scaleRoom;
  return {
    key: title.key,
    title: `${title.part}, ${title.hand} hand`,
    width: wide + 2 * MARGIN,
    height: height + whole + 10 + 2 * MARGIN,
    marks: [
      ...placed(marks, [MARGIN, MARGIN + whole + 10]),
      ...placed(written, [MARGIN, MARGIN + whole]),
      ...placed(checkScale(), [MARGIN, MARGIN]),
    ],
  };
}
