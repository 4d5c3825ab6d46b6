import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { armFigure, cutList, type Model, rodFigure } from '../../solver/index.ts';
import { cutListTable, drawingsOf } from '../../src/paper/drawing/drawings.ts';
import { drawingDxf } from '../../src/paper/drawing/dxf.ts';
import { drawingSvg } from '../../src/paper/drawing/svg.ts';
import { OVERLAP, tiledDocument, tilesOf } from '../../src/paper/drawing/tiles.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const OPTIONS = { unit: 'mm', hand: 'left', date: '2026-01-01' } as const;

/** A square arm that can be drawn by hand: pivots 300 apart along x, ball joint 400 outboard of the middle and 30 lower. */
function square(): Model {
  const model = shipped('planar-equal-arms');
  return {
    ...model,
    lowerArm: {
      frontPivot: [150, 300, 200],
      rearPivot: [-150, 300, 200],
      ballJoint: [50, 700, 200],
      tubeDiameter: 40,
      housingAxis: [0, 0, 1],
      legs: { front: [[150, 400, 200]], rear: [[-150, 400, 260]] },
    },
  };
}

describe('an arm laid flat', () => {
  it('has the lengths and angles of vector arithmetic by hand', () => {
    const arm = armFigure(square(), 'lowerArm');
    expect(arm.pivotToPivot).toBeCloseTo(300, 9);
    expect(arm.reach).toBeCloseTo(400, 9);
    expect(arm.offsets.front).toBeCloseTo(100, 9);
    expect(arm.offsets.rear).toBeCloseTo(-200, 9);
    expect(arm.frontToBall).toBeCloseTo(Math.hypot(100, 400), 9);
    expect(arm.rearToBall).toBeCloseTo(Math.hypot(200, 400), 9);
    expect(arm.cup.whole).toBeCloseTo(0, 9);
    const { front, rear } = arm.legs;
    expect(front.length).toBeCloseTo(100 + Math.hypot(100, 300), 9);
    expect(front.pivotAngle).toBeCloseTo(90, 9);
    expect(front.rise).toBeCloseTo(0, 9);
    // Straight out, then 100 back over 300 out.
    expect(front.bends).toEqual([
      { at: 100, angle: expect.closeTo((Math.atan2(100, 300) * 180) / Math.PI, 9), rotation: null },
    ]);
    // The pivots' line lies in the arm's plane, the cup stands on it.
    expect(Math.abs(front.rotation!)).toBeCloseTo(90, 9);
    expect(rear.length).toBeCloseTo(Math.hypot(100, 60) + Math.hypot(200, 300, 60), 9);
    expect(rear.rise).toBeCloseTo((Math.atan2(60, 100) * 180) / Math.PI, 9);
  });

  it('tilts the cup as its axis is tilted', () => {
    const model = square();
    const tilted = (axis: readonly [number, number, number]) =>
      armFigure({ ...model, lowerArm: { ...model.lowerArm, housingAxis: axis } }, 'lowerArm').cup;
    expect(tilted([1, 0, 1])).toEqual({
      whole: expect.closeTo(45, 9),
      forward: expect.closeTo(45, 9),
      outward: expect.closeTo(0, 9),
    });
    expect(tilted([0, -1, -Math.sqrt(3)]).outward).toBeCloseTo(30, 9);
  });

  it('keeps every length however the vehicle lies', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 3, maxLength: 3 }),
        ([dx, dy, dz]) => {
          const model = square();
          const { frontPivot, rearPivot, ballJoint, legs, ...rest } = model.lowerArm;
          const moved = (point: readonly [number, number, number]) =>
            [point[0] + dx!, point[1] + dy!, point[2] + dz!] as const;
          const arm = {
            ...rest,
            frontPivot: moved(frontPivot),
            rearPivot: moved(rearPivot),
            ballJoint: moved(ballJoint),
            legs: { front: legs!.front.map(moved), rear: legs!.rear.map(moved) },
          };
          const [a, b] = [model, { ...model, lowerArm: arm }].map((of) =>
            armFigure(of, 'lowerArm'),
          );
          expect(b!.legs.rear.length).toBeCloseTo(a!.legs.rear.length, 6);
          expect(b!.legs.rear.rotation).toBeCloseTo(a!.legs.rear.rotation!, 6);
          expect(b!.reach).toBeCloseTo(a!.reach, 6);
        },
      ),
      { seed: 5, numRuns: 60 },
    );
  });
});

describe('the cut list', () => {
  it('leaves off what is allowed at each end, and never more than there is', () => {
    const model = square();
    const plain = cutList(model);
    const less = cutList(model, { pivot: 20, ball: 30, rodEnd: 40 });
    for (const [at, piece] of less.entries()) {
      const off = piece.name === 'tieRod' ? 80 : piece.name === 'strap' ? 0 : 50;
      expect(piece.cut).toBeCloseTo(plain[at]!.centres - off, 9);
    }
    expect(cutList(model, { pivot: 9e4, ball: 0, rodEnd: 0 })[0]!.cut).toBe(0);
  });

  it('says in its table what the solver says', () => {
    const model = shipped('half-ton-long-travel');
    const { rows } = cutListTable(model, 'mm');
    expect(rows.map(([, centres]) => centres)).toEqual(
      cutList(model).map(({ centres }) => centres.toFixed(1)),
    );
  });
});

describe.each(SHIPPED)('the drawings of %s', (name) => {
  const model = shipped(name);

  it('are read back by another reader with their dimensions at full size', () => {
    for (const drawing of drawingsOf(model, OPTIONS)) {
      const read = new DxfParser().parseSync(drawingDxf(drawing))!;
      const count = (kind: string) => read.entities.filter(({ type }) => type === kind).length;
      const own = (kind: string) => drawing.marks.filter((mark) => mark.kind === kind).length;
      expect(count('POLYLINE')).toBe(own('stroke'));
      expect(count('TEXT')).toBe(own('words'));
      expect(count('CIRCLE')).toBe(own('circle'));
      const strokes = drawing.marks.flatMap((mark) => (mark.kind === 'stroke' ? [mark.spots] : []));
      const lines = read.entities.flatMap((entity) =>
        entity.type === 'POLYLINE'
          ? [(entity as never as { vertices: { x: number; y: number }[] }).vertices]
          : [],
      );
      lines.forEach((line, at) => {
        line.forEach(({ x, y }, k) => {
          expect(x).toBeCloseTo(strokes[at]![k]![0], 5);
          expect(y).toBeCloseTo(strokes[at]![k]![1], 5);
        });
      });
    }
  });

  it('dimension the arm by its own lengths, drawn that long', () => {
    const [upper, lower, rod] = drawingsOf(model, OPTIONS);
    const said = (drawing: typeof upper) =>
      drawing!.marks.flatMap((mark) =>
        mark.kind === 'words' && mark.layer === 'dimension' ? [mark.text] : [],
      );
    for (const [drawing, arm] of [
      [upper, armFigure(model, 'upperArm')],
      [lower, armFigure(model, 'lowerArm')],
    ] as const) {
      expect(said(drawing)).toEqual(
        [
          arm.pivotToPivot,
          Math.abs(arm.offsets.front),
          Math.abs(arm.offsets.rear),
          arm.reach,
          arm.frontToBall,
          arm.rearToBall,
        ].map((mm) => mm.toFixed(1)),
      );
      const lengths = drawing!.marks.flatMap((mark) => {
        if (mark.kind !== 'stroke' || mark.layer !== 'dimension' || mark.spots.length !== 2)
          return [];
        const [[ax, ay], [bx, by]] = mark.spots as [[number, number], [number, number]];
        return [Math.hypot(bx - ax, by - ay)];
      });
      for (const length of [arm.pivotToPivot, arm.reach, arm.frontToBall, arm.rearToBall])
        expect(lengths.some((drawn) => Math.abs(drawn - length) < 1e-6)).toBe(true);
    }
    expect(said(rod)).toEqual([rodFigure(model).straight.toFixed(1)]);
  });

  it('lie wholly on their sheet, and on pages that overlap', () => {
    for (const drawing of [
      ...drawingsOf(model, OPTIONS),
      ...drawingsOf(model, { ...OPTIONS, hand: 'right', unit: 'inch' }),
    ]) {
      for (const mark of drawing.marks) {
        for (const [x, y] of mark.kind === 'stroke' ? mark.spots : [mark.at]) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(drawing.width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(drawing.height);
        }
      }
      for (const paper of ['a4', 'letter'] as const) {
        const { tiles } = tilesOf(drawing, paper);
        const right = Math.max(...tiles.map(({ left, width }) => left + width));
        const low = Math.max(...tiles.map(({ top, height }) => top + height));
        expect(right).toBeGreaterThanOrEqual(drawing.width - 1e-9);
        expect(low).toBeGreaterThanOrEqual(drawing.height - 1e-9);
        const lefts = [...new Set(tiles.map(({ left }) => left))].sort((a, b) => a - b);
        lefts.slice(1).forEach((left, at) => {
          expect(lefts[at]! + tiles[0]!.width - left).toBeCloseTo(OVERLAP, 9);
        });
      }
    }
  });
});

it('shows a hostile name as words alone', () => {
  const name = `</title><script>alert(1)</script>"'&<img src=x onerror=alert(1)>`;
  for (const drawing of drawingsOf({ ...shipped('half-ton-factory'), name }, OPTIONS)) {
    for (const text of [drawingSvg(drawing), tiledDocument(drawing, 'a4')]) {
      expect(text).not.toMatch(/<script|<img/);
    }
    expect(drawingDxf(drawing)).toMatch(/^[\r\n -~]*$/);
  }
});
