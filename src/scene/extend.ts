/**
 * What of three the scene's JSX may name. Handing fiber the whole of three would keep all of it in the first picture;
 * each part added here is weighed by the budget test.
 */
import { extend } from '@react-three/fiber';
import {
  AmbientLight,
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  DirectionalLight,
  Group,
  HemisphereLight,
  InstancedMesh,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  Object3D,
  PlaneGeometry,
  SphereGeometry,
} from 'three';

/** Tells fiber the elements the scene uses; called once, before the root is made. */
export function extendScene(): void {
  extend({
    AmbientLight,
    BoxGeometry,
    BufferAttribute,
    BufferGeometry,
    CylinderGeometry,
    DirectionalLight,
    Group,
    HemisphereLight,
    InstancedMesh,
    LineBasicMaterial,
    LineSegments,
    Mesh,
    MeshBasicMaterial,
    MeshStandardMaterial,
    Object3D,
    PlaneGeometry,
    SphereGeometry,
  });
}
