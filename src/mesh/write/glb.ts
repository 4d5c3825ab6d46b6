/**
 * Writes closed surfaces as GLB: metres, y up and z forward, as the glTF standard has it. Vehicle (x, y, z) in mm becomes
 * (y, z, x)/1000, which keeps right-handed axes right-handed.
 */
import { BufferAttribute, BufferGeometry, Mesh, MeshStandardMaterial } from 'three';
import { GLTFExporter } from 'three/addons/exporters/GLTFExporter.js';
import type { Triangulated } from './stl.ts';

const METRES = 0.001;

function turned(from: Float32Array, scale: number): BufferAttribute {
  const out = new Float32Array(from.length);
  for (let i = 0; i < from.length; i += 3) {
    out[i] = scale * from[i + 1]!;
    out[i + 1] = scale * from[i + 2]!;
    out[i + 2] = scale * from[i]!;
  }
  return new BufferAttribute(out, 3);
}

/** The bytes of a GLB file with one mesh called `name`, whose extras say its unit, its axes and `notes`. */
export async function writeGlb(
  { positions, normals, triangles }: Triangulated & { readonly normals: Float32Array },
  name: string,
  notes: Readonly<Record<string, string | number>>,
): Promise<Uint8Array<ArrayBuffer>> {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', turned(positions, METRES));
  geometry.setAttribute('normal', turned(normals, 1));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  const material = new MeshStandardMaterial({ color: 0x0a5f7d, metalness: 0, roughness: 0.8 });
  const mesh = new Mesh(geometry, material);
  mesh.name = name;
  mesh.userData = { unit: 'metre', axes: 'x left, y up, z forward', ...notes };
  const written = await new GLTFExporter().parseAsync(mesh, { binary: true });
  geometry.dispose();
  material.dispose();
  if (!(written instanceof ArrayBuffer)) throw new Error('The GLB file was not written as bytes.');
  return new Uint8Array(written);
}
