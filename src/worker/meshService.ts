/** Reads and prepares mesh files behind the page. */
import type { MeshTriangles } from '../mesh/data.ts';
import { startBackground } from './background.ts';
import type { MeshAnswer, MeshRequest, PreparedMesh, ReadMesh } from './meshJob.ts';

export type { PreparedMesh, ReadMesh } from './meshJob.ts';

/** Where no worker starts nothing is read: the page itself would stand still, and what reads would weigh on every visit. */
const NO_WORKER: MeshAnswer = {
  ok: false,
  found: 'a browser that lets the page do no work behind it',
  wanted: 'the bench opened from its server',
};

/** One piece of work in a worker of its own, which ends with it: files are rare, and their memory is large. */
function run(request: MeshRequest): Promise<MeshAnswer> {
  return new Promise((resolve) => {
    const background = startBackground<MeshRequest, MeshAnswer>(
      {
        spawn: () => new Worker(new URL('./meshWorker.ts', import.meta.url), { type: 'module' }),
        create: (answer) => ({ ask: () => answer(NO_WORKER) }),
        ownerOf: () => 'file',
      },
      (answer) => {
        background.stop();
        resolve(answer);
      },
    );
    background.ask(request);
  });
}

export type MeshFileReading =
  | ReadMesh
  | { readonly ok: false; readonly found: string; readonly wanted: string };

/** The triangles in a file's bytes, or why there are none. */
export async function readMeshFile(
  name: string,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<MeshFileReading> {
  const answer = await run({ kind: 'read', name, bytes });
  if (answer.ok && 'prepared' in answer) throw new Error('A mesh was prepared, not read.');
  return answer;
}

/** The mesh in mm, `scale` of them in one of its unit. */
export async function prepareMesh(mesh: MeshTriangles, scale: number): Promise<PreparedMesh> {
  const answer = await run({ kind: 'prepare', mesh, scale });
  if (!answer.ok) throw new Error(answer.found);
  if (!('prepared' in answer)) throw new Error('A mesh was read, not prepared.');
  return answer.prepared;
}
