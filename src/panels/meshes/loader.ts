/** The page's one loader of mesh files. */
import { documentStore, notices } from '../../state/bench.ts';
import { workRestored } from '../../state/keeping.ts';
import { createMeshArchive } from '../../state/meshArchive.ts';
import { meshes } from '../../state/meshes.ts';
import { startMeshLoader } from '../../state/meshLoader.ts';
import { prepareMesh, readMeshFile } from '../../worker/meshService.ts';

const addresses = import.meta.glob<string>('../../../models/*.{stl,ply,obj,glb}', {
  query: '?url',
  import: 'default',
});

/** The bytes of a mesh file that comes with the shipped models. */
async function shipped(name: string): Promise<Uint8Array<ArrayBuffer> | null> {
  const address = addresses[`../../../models/${name}`];
  if (address === undefined) return null;
  try {
    const answer = await fetch(await address());
    return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : null;
  } catch {
    return null;
  }
}

export const meshLoader = startMeshLoader({
  documentStore,
  meshes,
  notices,
  archive: createMeshArchive(),
  read: readMeshFile,
  prepare: prepareMesh,
  shipped,
  restored: workRestored(),
  now: Date.now,
});
