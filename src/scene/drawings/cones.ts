/** Cones of glass for the joints' limits: a fixed number, made once, placed in place each frame. */
import { ConeGeometry, DoubleSide, Group, Mesh, MeshBasicMaterial, Vector3 } from 'three';
import type { Palette, Tone } from '../palette.ts';
import { placeAlong } from '../placing.ts';

/** Joints of a corner that can state a limit. */
const MOST = 6;
const SIDES = 40;
const OPACITY = 0.16;
/** After other glass, before the lines over it. */
const ORDER = 30;

const _size = new Vector3();

export interface Cones {
  readonly object: Group;
  paint(palette: Palette): void;
  begin(): void;
  /** A cone from its tip along the unit direction u; `reach` is its side's length, `half` its half-angle, degrees. */
  cone(
    x: number,
    y: number,
    z: number,
    ux: number,
    uy: number,
    uz: number,
    reach: number,
    half: number,
    tone: Tone,
  ): void;
  end(): void;
  dispose(): void;
}

/** A cone of height 1 and radius 1, its tip at the origin, open towards z. */
function coneGeometry(): ConeGeometry {
  const geometry = new ConeGeometry(1, 1, SIDES, 1, true);
  geometry.rotateX(-Math.PI / 2);
  geometry.translate(0, 0, 0.5);
  return geometry;
}

function makeMaterial(): MeshBasicMaterial {
  return new MeshBasicMaterial({
    transparent: true,
    opacity: OPACITY,
    depthWrite: false,
    side: DoubleSide,
    toneMapped: false,
  });
}

export function createCones(): Cones {
  const geometry = coneGeometry();
  const materials = { soft: makeMaterial(), near: makeMaterial(), touch: makeMaterial() };
  const object = new Group();
  const meshes = Array.from({ length: MOST }, () => {
    const mesh = new Mesh(geometry, materials.soft);
    mesh.name = 'jointCone';
    mesh.matrixAutoUpdate = false;
    mesh.frustumCulled = false;
    mesh.renderOrder = ORDER;
    mesh.visible = false;
    mesh.raycast = () => undefined;
    object.add(mesh);
    return mesh;
  });
  let count = 0;
  return {
    object,
    paint({ tones }) {
      materials.soft.color.set(tones.accent);
      materials.near.color.set(tones.near);
      materials.touch.color.set(tones.touch);
    },
    begin() {
      count = 0;
    },
    cone(x, y, z, ux, uy, uz, reach, half, tone) {
      const mesh = meshes[count];
      if (mesh === undefined) return;
      count += 1;
      mesh.material = tone === 'touch' || tone === 'near' ? materials[tone] : materials.soft;
      placeAlong(mesh, x, y, z, ux, uy, uz);
      const radius = reach * Math.sin((half * Math.PI) / 180);
      mesh.matrix.scale(_size.set(radius, radius, reach * Math.cos((half * Math.PI) / 180)));
    },
    end() {
      for (let i = count; i < MOST; i += 1) meshes[i]!.visible = false;
    },
    dispose() {
      geometry.dispose();
      for (const material of Object.values(materials)) material.dispose();
    },
  };
}
