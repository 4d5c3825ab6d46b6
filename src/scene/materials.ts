/**
 * The scene's materials, made once and shared: one for all that is painted and one for each name that stands apart, a lit
 * one beside each (a part whose measure is asked about), a see-through one for the ghosted wheel, and one of mere
 * outlines for the held design. Themes repaint them in place.
 */
import { Color, DoubleSide, FrontSide, LineBasicMaterial, MeshStandardMaterial } from 'three';
import type { Theme } from '../state/view.ts';
import { groundPlane } from './ground/plane.ts';
import { APART, type ApartName, MATERIAL_NAMES, type MaterialName } from './materialNames.ts';
import { createPainted, createPaints, type Paints, setPaint } from './paints.ts';

interface Paint {
  readonly light: number;
  readonly dark: number;
  readonly roughness: number;
  readonly metalness?: number;
  /** Below 1: translucent, and nothing behind it is hidden. */
  readonly opacity?: number;
  readonly twoSided?: boolean;
  /** Cut off flat where it would reach through the ground. */
  readonly standsOnGround?: boolean;
}

const PAINTS: Record<MaterialName, Paint> = {
  arm: { light: 0x4c6470, dark: 0x6d8a98, roughness: 0.52, metalness: 0.15 },
  knuckle: { light: 0x8b877d, dark: 0x9d998e, roughness: 0.78, metalness: 0.25 },
  steel: { light: 0x8d959a, dark: 0x9aa3a8, roughness: 0.36, metalness: 0.55 },
  dark: { light: 0x4a5055, dark: 0x555d62, roughness: 0.5, metalness: 0.3 },
  rod: { light: 0xd0901a, dark: 0xe0a22c, roughness: 0.42, metalness: 0.12 },
  spring: { light: 0x1f4a8c, dark: 0x3467b4, roughness: 0.36, metalness: 0.1 },
  rubber: { light: 0x26292b, dark: 0x2c3033, roughness: 0.9 },
  boot: { light: 0x2f3336, dark: 0x3a4044, roughness: 0.72 },
  alloy: { light: 0xa2a9ad, dark: 0x9ca4a8, roughness: 0.4, metalness: 0.5 },
  tyre: { light: 0x3d4042, dark: 0x3a3e41, roughness: 0.86, standsOnGround: true },
  disc: { light: 0x858c90, dark: 0x8a9296, roughness: 0.46, metalness: 0.5 },
  caliper: { light: 0x5d676c, dark: 0x78848a, roughness: 0.6, metalness: 0.2 },
  fixed: { light: 0x969c99, dark: 0x6f787c, roughness: 0.75, metalness: 0.1 },
  webbing: { light: 0x6b6a4d, dark: 0x8a8966, roughness: 0.95, twoSided: true },
  stop: { light: 0xd9d4bf, dark: 0xcfc9b2, roughness: 0.8 },
  cutMetal: { light: 0x6a2f5c, dark: 0x9a5488, roughness: 0.85 },
  cutRubber: { light: 0x645c66, dark: 0x7b727d, roughness: 0.95, standsOnGround: true },
  obstacle: { light: 0x7d8a86, dark: 0x87958f, roughness: 0.9, opacity: 0.26 },
  scan: { light: 0x7d8a86, dark: 0x87958f, roughness: 0.9, opacity: 0.46, twoSided: true },
  envelope: { light: 0x8d7b52, dark: 0xb39f70, roughness: 0.9, opacity: 0.16, twoSided: true },
};

const GHOST_OPACITY = 0.16;
const HELD: Paint = {
  light: 0x3f474c,
  dark: 0xd5dcdf,
  roughness: 1,
  opacity: 1,
  standsOnGround: true,
};
const LIT = { light: 0x0d7ea6, dark: 0x3fb3d6 } as const;
const LIT_STRENGTH = 0.55;
const EDGE = { light: 0x4a5a55, dark: 0xa9bab4 } as const;

/** What a mesh is drawn in: the paints of its vertices, or a material that stands apart. */
export type Finish = 'painted' | ApartName;
type Finishes = Readonly<Record<Finish, MeshStandardMaterial>>;

export interface Materials {
  readonly plain: Finishes;
  readonly lit: Finishes;
  readonly ghost: Finishes;
  readonly held: MeshStandardMaterial;
  readonly edge: LineBasicMaterial;
  readonly paints: Paints;
}

function make(paint: Paint, opacity = paint.opacity ?? 1): MeshStandardMaterial {
  return new MeshStandardMaterial({
    roughness: paint.roughness,
    metalness: paint.metalness ?? 0,
    side: paint.twoSided ? DoubleSide : FrontSide,
    transparent: opacity < 1,
    opacity,
    depthWrite: opacity === 1,
    // A scan has as many triangles as the rest of the picture many times over: both its sides are drawn at once.
    forceSinglePass: true,
    clippingPlanes: paint.standsOnGround ? [groundPlane] : null,
  });
}

/** Opacity of the held design where it faces the eye, and where it turns away from it: its outline. */
const HELD_FACE = 0.16;
const HELD_EDGE = 0.7;

/**
 * The held design: a faint body with a firm outline in the ink of the theme, so that it reads on any ground. Where it
 * has not changed it lies behind the present design's own surface and is not seen.
 */
function makeHeld(): MeshStandardMaterial {
  const material = make(HELD);
  material.transparent = true;
  material.depthWrite = false;
  material.polygonOffset = true;
  material.polygonOffsetFactor = 1.5;
  material.polygonOffsetUnits = 4;
  material.onBeforeCompile = (shader) => {
    shader.fragmentShader = shader.fragmentShader.replace(
      '#include <opaque_fragment>',
      `float edge = smoothstep( 0.6, 0.95, 1.0 - abs( dot( normalize( vViewPosition ), normal ) ) );
      diffuseColor.a = mix( ${HELD_FACE}, ${HELD_EDGE}, edge );
      outgoingLight = mix( outgoingLight, diffuseColor.rgb, edge );
      #include <opaque_fragment>`,
    );
  };
  return material;
}

function makeAll(paints: Paints, opacity?: number): Finishes {
  const apart = APART.map((name) => [name, make(PAINTS[name], opacity)] as const);
  return Object.fromEntries([...apart, ['painted', createPainted(paints, opacity)]]) as Finishes;
}

/** Gives every material its colours of the theme. */
export function paint(materials: Materials, theme: Theme): void {
  for (const name of MATERIAL_NAMES) {
    const { roughness, metalness = 0, ...colours } = PAINTS[name];
    setPaint(materials.paints, name, colours[theme], roughness, metalness);
  }
  for (const use of ['plain', 'lit', 'ghost'] as const) {
    for (const name of APART) materials[use][name].color.setHex(PAINTS[name][theme]);
  }
  for (const finish of Object.values(materials.lit)) {
    finish.emissive = new Color(LIT[theme]);
    finish.emissiveIntensity = LIT_STRENGTH;
  }
  materials.held.color.setHex(HELD[theme]);
  materials.edge.color.setHex(EDGE[theme]);
}

export function createMaterials(theme: Theme): Materials {
  const paints = createPaints();
  const materials: Materials = {
    plain: makeAll(paints),
    lit: makeAll(paints),
    ghost: makeAll(paints, GHOST_OPACITY),
    held: makeHeld(),
    edge: new LineBasicMaterial({ transparent: true, opacity: 0.6 }),
    paints,
  };
  paint(materials, theme);
  return materials;
}
