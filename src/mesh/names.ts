/** Names of mesh files. */

/** Endings of the files that can be read. */
export const MESH_ENDINGS = ['stl', 'ply', 'obj', 'glb'] as const;

/** Ending of a file's name, in small letters without its dot. */
export function endingOf(name: string): string {
  return /\.([^./\\]+)$/.exec(name)?.[1]?.toLowerCase() ?? '';
}

/** Whether a file's name is that of a mesh. */
export function isMeshName(name: string): boolean {
  return MESH_ENDINGS.some((ending) => ending === endingOf(name));
}

/** Shapes in forms that are not read here: offered as meshes, they are refused with words on what to save them as. */
const FOREIGN = ['step', 'stp', 'iges', 'igs', '3mf', 'gltf', 'off', 'amf'];

/** Whether a file's name is that of a shape rather than of a model, in whatever form. */
export function isShapeName(name: string): boolean {
  return isMeshName(name) || FOREIGN.includes(endingOf(name));
}

/** The file's own name, without the folders before it. */
export function baseOf(name: string): string {
  return name.slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
}
