/**
 * A truncated algebra: numbers that carry their Taylor coefficients along one line of the motion (up to s²) and, for each of these, its exact
 * first derivatives with respect to every input. Computing with them differentiates without differences.
 *
 * With x = Σ sᵏ·(v_k + Σ_i g_ki·dp_i), products drop s³ and dp². A jet is the number of its place; its coefficients stand in one flat
 * buffer, so that thousands of operations leave nothing to collect: `mark` and `release` give the room back.
 * Source: A. Griewank and A. Walther, Evaluating Derivatives (SIAM, 2nd ed. 2008), chapters 3 and 13, from memory.
 */

/** Greatest power of s. */
export const MOST_ORDER = 2;

/** Place of a jet in its algebra. */
export type Jet = number;

export class Jets {
  readonly inputCount: number;
  /** Powers of s above this are dropped: 0 for a pose, 1 for its rates, 2 for their rates. */
  order: 0 | 1 | 2 = MOST_ORDER;
  /** One power of s: a value and its derivatives. */
  private readonly width: number;
  private readonly stride: number;
  private data: Float64Array;
  /** The highest power of s each jet has. */
  private tops: Uint8Array;
  private used = 0;

  constructor(inputCount: number, capacity = 256) {
    this.inputCount = inputCount;
    this.width = inputCount + 1;
    this.stride = this.width * (MOST_ORDER + 1);
    this.data = new Float64Array(this.stride * capacity);
    this.tops = new Uint8Array(capacity);
  }

  mark(): number {
    return this.used;
  }

  /** Gives back the room of all jets made since the mark. */
  release(mark: number): void {
    this.used = mark;
  }

  private take(top: number): Jet {
    const jet = this.used;
    if (jet === this.tops.length) this.grow();
    this.used += 1;
    this.tops[jet] = Math.min(top, this.order);
    const from = jet * this.stride;
    this.data.fill(0, from, from + (this.tops[jet]! + 1) * this.width);
    return jet;
  }

  private grow(): void {
    const data = new Float64Array(this.data.length * 2);
    data.set(this.data);
    this.data = data;
    const tops = new Uint8Array(this.tops.length * 2);
    tops.set(this.tops);
    this.tops = tops;
  }

  constant(value: number): Jet {
    const jet = this.take(0);
    this.data[jet * this.stride] = value;
    return jet;
  }

  /** The input at a place, with its value. */
  input(value: number, place: number): Jet {
    const jet = this.constant(value);
    this.data[jet * this.stride + 1 + place] = 1;
    return jet;
  }

  /** value + rate·s */
  moving(value: number, rate: number): Jet {
    const jet = this.take(1);
    this.data[jet * this.stride] = value;
    if (this.tops[jet]! > 0) this.data[jet * this.stride + this.width] = rate;
    return jet;
  }

  value(jet: Jet): number {
    return this.data[jet * this.stride]!;
  }

  /** Copies the derivatives with respect to the inputs into `out` from `at` on, each times `factor`. */
  gradientInto(jet: Jet, out: Float64Array, at: number, factor = 1): void {
    const from = jet * this.stride + 1;
    for (let i = 0; i < this.inputCount; i += 1) out[at + i] = factor * this.data[from + i]!;
  }

  /** f·a + g·b */
  combine(a: Jet, f: number, b: Jet, g: number): Jet {
    const jet = this.take(Math.max(this.tops[a]!, this.tops[b]!));
    this.accumulate(jet, a, f);
    this.accumulate(jet, b, g);
    return jet;
  }

  private accumulate(to: Jet, a: Jet, factor: number): void {
    if (factor === 0) return;
    const { data, stride, width } = this;
    const length = (Math.min(this.tops[a]!, this.tops[to]!) + 1) * width;
    const [from, into] = [a * stride, to * stride];
    for (let i = 0; i < length; i += 1) data[into + i] = data[into + i]! + factor * data[from + i]!;
  }

  add(a: Jet, b: Jet): Jet {
    return this.combine(a, 1, b, 1);
  }

  subtract(a: Jet, b: Jet): Jet {
    return this.combine(a, 1, b, -1);
  }

  scale(a: Jet, factor: number): Jet {
    const jet = this.take(this.tops[a]!);
    this.accumulate(jet, a, factor);
    return jet;
  }

  multiply(a: Jet, b: Jet): Jet {
    const jet = this.take(this.tops[a]! + this.tops[b]!);
    const { data, stride, width } = this;
    const [topA, topB, top] = [this.tops[a]!, this.tops[b]!, this.tops[jet]!];
    for (let i = 0; i <= topA; i += 1) {
      const from = a * stride + i * width;
      const x = data[from]!;
      for (let j = 0; j <= topB && i + j <= top; j += 1) {
        const other = b * stride + j * width;
        const into = jet * stride + (i + j) * width;
        const y = data[other]!;
        data[into] = data[into]! + x * y;
        for (let g = 1; g < width; g += 1) {
          data[into + g] = data[into + g]! + x * data[other + g]! + y * data[from + g]!;
        }
      }
    }
    return jet;
  }

  /** f(a) by Taylor's series about a's value: `derivatives` are f, f′, f″/2, f‴/6 there; s²·dp is the highest power there is. */
  private compose(a: Jet, derivatives: readonly [number, number, number, number]): Jet {
    const [f0, f1, f2, f3] = derivatives;
    const rest = this.scale(a, 1);
    this.data[rest * this.stride] = 0;
    const jet = this.scale(rest, f1);
    this.data[jet * this.stride] = f0;
    if (this.tops[a]! === 0 || this.order === 0) return jet;
    const square = this.multiply(rest, rest);
    const cube = this.multiply(square, rest);
    return this.add(jet, this.combine(square, f2, cube, f3));
  }

  reciprocal(a: Jet): Jet {
    const x = 1 / this.value(a);
    return this.compose(a, [x, -x * x, x * x * x, -x * x * x * x]);
  }

  divide(a: Jet, b: Jet): Jet {
    return this.multiply(a, this.reciprocal(b));
  }

  squareRoot(a: Jet): Jet {
    const value = this.value(a);
    const root = Math.sqrt(value);
    return this.compose(a, [
      root,
      0.5 / root,
      -0.125 / (root * value),
      0.0625 / (root * value * value),
    ]);
  }

  sine(a: Jet): Jet {
    const [s, c] = [Math.sin(this.value(a)), Math.cos(this.value(a))];
    return this.compose(a, [s, c, -s / 2, -c / 6]);
  }

  cosine(a: Jet): Jet {
    const [s, c] = [Math.sin(this.value(a)), Math.cos(this.value(a))];
    return this.compose(a, [c, -s, -c / 2, s / 6]);
  }

  /** Angle of (x, y), rad: turned back by its own value first, so that the series is that of atan about 0. */
  angle(y: Jet, x: Jet): Jet {
    const [x0, y0] = [this.value(x), this.value(y)];
    const along = this.combine(x, x0, y, y0);
    const across = this.combine(y, x0, x, -y0);
    const jet = this.compose(this.divide(across, along), [0, 1, 0, -1 / 3]);
    this.data[jet * this.stride] = Math.atan2(y0, x0);
    return jet;
  }

  /** The value and derivatives at s = 0 alone. */
  now(a: Jet): Jet {
    return this.part(a, 0, 1);
  }

  /** d/ds at s = 0. */
  rate(a: Jet): Jet {
    return this.part(a, 1, 1);
  }

  /** d²/ds² at s = 0. */
  bend(a: Jet): Jet {
    return this.part(a, 2, 2);
  }

  private part(a: Jet, power: number, factor: number): Jet {
    const jet = this.take(0);
    if (power > this.tops[a]!) return jet;
    const { data, stride, width } = this;
    const from = a * stride + power * width;
    for (let i = 0; i < width; i += 1) data[jet * stride + i] = factor * data[from + i]!;
    return jet;
  }

  /** a_j + Σ_i matrix[j, i]·b_i for each j, `matrix` real, by rows: one Newton step on jets. */
  stepBy(a: readonly Jet[], matrix: Float64Array, b: readonly Jet[]): Jet[] {
    return a.map((own, row) => {
      const jet = this.take(this.order);
      this.accumulate(jet, own, 1);
      b.forEach((other, column) => {
        this.accumulate(jet, other, matrix[row * b.length + column]!);
      });
      return jet;
    });
  }
}
