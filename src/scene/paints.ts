/**
 * One material for many paints: each vertex names its paint, and colour, roughness and metalness are looked up by it. A
 * body of several materials is then one mesh and one draw call, and a theme repaints two small lists.
 */
import { BufferAttribute, type BufferGeometry, Color, MeshStandardMaterial } from 'three';
import { MATERIAL_NAMES, type MaterialName } from './materialNames.ts';

const COUNT = MATERIAL_NAMES.length;

/** The paints of a theme, shared by every painted material: red, green, blue (linear) and roughness; metalness. */
export interface Paints {
  readonly colours: { value: Float32Array };
  readonly metal: { value: Float32Array };
}

export function createPaints(): Paints {
  return {
    colours: { value: new Float32Array(4 * COUNT) },
    metal: { value: new Float32Array(COUNT) },
  };
}

const _colour = new Color();

export function setPaint(
  paints: Paints,
  name: MaterialName,
  hex: number,
  roughness: number,
  metalness: number,
): void {
  const at = MATERIAL_NAMES.indexOf(name);
  const { r, g, b } = _colour.setHex(hex);
  paints.colours.value.set([r, g, b, roughness], 4 * at);
  paints.metal.value[at] = metalness;
}

/** Names one paint for every vertex of a geometry. */
export function dip(geometry: BufferGeometry, name: MaterialName): void {
  const count = geometry.getAttribute('position').count;
  const paint = new Uint8Array(count).fill(MATERIAL_NAMES.indexOf(name));
  geometry.setAttribute('paint', new BufferAttribute(paint, 1));
}

const VERTEX = `attribute float paint;
uniform vec4 paints[${COUNT}];
uniform float paintMetal[${COUNT}];
varying vec4 vPaint;
varying float vPaintMetal;
`;
const FRAGMENT = `varying vec4 vPaint;
varying float vPaintMetal;
`;

/** A standard material whose vertices are painted by `paints`; opaque unless an opacity below 1 is given. */
export function createPainted(paints: Paints, opacity = 1): MeshStandardMaterial {
  const material = new MeshStandardMaterial({
    roughness: 1,
    metalness: 1,
    transparent: opacity < 1,
    opacity,
    depthWrite: opacity === 1,
  });
  material.onBeforeCompile = (shader) => {
    shader.uniforms['paints'] = paints.colours;
    shader.uniforms['paintMetal'] = paints.metal;
    shader.vertexShader = `${VERTEX}${shader.vertexShader}`.replace(
      '#include <begin_vertex>',
      `#include <begin_vertex>
      vPaint = paints[int(paint)];
      vPaintMetal = paintMetal[int(paint)];`,
    );
    shader.fragmentShader = `${FRAGMENT}${shader.fragmentShader}`
      .replace('#include <color_fragment>', 'diffuseColor.rgb *= vPaint.rgb;')
      .replace('#include <roughnessmap_fragment>', 'float roughnessFactor = roughness * vPaint.a;')
      .replace(
        '#include <metalnessmap_fragment>',
        'float metalnessFactor = metalness * vPaintMetal;',
      );
  };
  material.customProgramCacheKey = () => 'painted';
  return material;
}
