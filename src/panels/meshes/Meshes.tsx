/** Mesh files on the page: what is asked about the ones that were opened. */
import { useStore } from 'zustand';
import { meshes } from '../../state/meshes.ts';
import { MeshDialog } from './MeshDialog.tsx';

export default function Meshes() {
  const [first] = useStore(meshes, (state) => state.offered);
  return first === undefined ? null : <MeshDialog key={first.reading.content} offered={first} />;
}
