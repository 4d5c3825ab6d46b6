/**
 * How the swept space looks: glass, clearer where it is seen square on and denser towards its rim. Where it lies in
 * something fixed it is hatched, where it comes nearer than wanted it is dotted: colour never says it alone.
 */
import { Color, FrontSide, MeshBasicMaterial, MeshLambertMaterial } from 'three';
import type { Palette } from '../palette.ts';

export interface SweptMaterials {
  /** Writes depth alone, so that only the nearest sheet of the surface is seen. */
  readonly depth: MeshBasicMaterial;
  readonly glass: MeshLambertMaterial;
  paint(palette: Palette, isStale: boolean): void;
  dispose(): void;
}

/** Distance of the hatching's and the dots' rows, mm. */
const PITCH = 14;

const VERTEX = `
  attribute vec2 room;
  varying vec2 vRoom;
  varying vec3 vPlace;
`;

const FRAGMENT = `
  uniform vec3 uNear;
  uniform vec3 uTouch;
  uniform float uStale;
  varying vec2 vRoom;
  varying vec3 vPlace;
  float sweptRow(float at) {
    float here = abs(fract(at / ${PITCH.toFixed(1)}) - 0.5) * 2.0;
    float soft = min(0.5, fwidth(at) / ${(PITCH / 2).toFixed(1)});
    return smoothstep(0.5 - soft, 0.5 + soft, here);
  }
`;

const SHADE = `
  {
    float facing = abs(dot(normalize(vNormal), normalize(vViewPosition)));
    float rim = pow(1.0 - facing, 3.0);
    float density = mix(0.17, 0.55, rim);
    vec3 shade = diffuseColor.rgb;
    if (vRoom.x < 0.0) {
      float hatch = sweptRow(vPlace.x + vPlace.y + vPlace.z);
      shade = mix(uTouch, mix(uTouch, vec3(1.0), 0.55), hatch);
      density = mix(0.94, 0.72, hatch);
    } else if (vRoom.x < vRoom.y) {
      float dots = sweptRow(vPlace.x + vPlace.z) * sweptRow(vPlace.y - vPlace.z);
      shade = uNear;
      density = mix(0.42, 0.95, dots);
    } else {
      // While it belongs to an earlier design it is drawn in stripes of air.
      density *= 1.0 - uStale * sweptRow(2.0 * vPlace.z);
    }
    diffuseColor = vec4(shade, density);
  }
`;

export function createSweptMaterials(): SweptMaterials {
  // Counted as transparent, so that it comes after all other glass and hides none of it.
  const depth = new MeshBasicMaterial({ colorWrite: false, transparent: true, side: FrontSide });
  const glass = new MeshLambertMaterial({ transparent: true, depthWrite: false, side: FrontSide });
  const uniforms = {
    uNear: { value: new Color() },
    uTouch: { value: new Color() },
    uStale: { value: 0 },
  };
  glass.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, uniforms);
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', `#include <common>\n${VERTEX}`)
      .replace(
        '#include <begin_vertex>',
        '#include <begin_vertex>\n vRoom = room;\n vPlace = position;',
      );
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', `#include <common>\n${FRAGMENT}`)
      .replace('#include <color_fragment>', `#include <color_fragment>\n${SHADE}`);
  };
  return {
    depth,
    glass,
    paint({ tones }, isStale) {
      glass.color.set(tones.accent);
      uniforms.uNear.value.set(tones.near);
      uniforms.uTouch.value.set(tones.touch);
      uniforms.uStale.value = isStale ? 0.75 : 0;
    },
    dispose() {
      depth.dispose();
      glass.dispose();
    },
  };
}
