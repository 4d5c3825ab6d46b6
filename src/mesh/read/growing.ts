/** Triangles gathered while a file of unknown length is read. */
import type { MeshTriangles } from '../data.ts';
import { MOST_TRIANGLES, tooManyTriangles } from './fault.ts';

/** Numbers in a typed array that doubles when it is full. */
class Column<T extends Float32Array | Uint32Array> {
  length = 0;
  private items: T;
  private readonly make: (size: number) => T;

  constructor(make: (size: number) => T) {
    this.make = make;
    this.items = make(4096);
  }

  push(value: number): void {
    if (this.length === this.items.length) {
      const larger = this.make(2 * this.length);
      larger.set(this.items);
      this.items = larger;
    }
    this.items[this.length] = value;
    this.length += 1;
  }

  get(at: number): number {
    return this.items[at]!;
  }

  /** What was gathered, in memory of its own. */
  taken(): T {
    return this.items.slice(0, this.length) as T;
  }
}

export class GrowingMesh {
  private readonly positions = new Column((size) => new Float32Array(size));
  private readonly index = new Column((size) => new Uint32Array(size));

  get vertices(): number {
    return this.positions.length / 3;
  }

  get triangles(): number {
    return this.index.length / 3;
  }

  vertex(x: number, y: number, z: number): void {
    this.positions.push(x);
    this.positions.push(y);
    this.positions.push(z);
  }

  place(vertex: number): readonly [number, number, number] {
    const at = 3 * vertex;
    return [this.positions.get(at), this.positions.get(at + 1), this.positions.get(at + 2)];
  }

  triangle(a: number, b: number, c: number): void {
    if (this.triangles >= MOST_TRIANGLES) throw tooManyTriangles(this.triangles + 1);
    this.index.push(a);
    this.index.push(b);
    this.index.push(c);
  }

  taken(): MeshTriangles {
    return { positions: this.positions.taken(), index: this.index.taken() };
  }
}
