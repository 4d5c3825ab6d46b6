/** The files behind mesh obstacles, in the obstacles' folder: what each is, what is wrong with it, and a way to open one. */
import './meshFiles.css';
import { useStore } from 'zustand';
import { meshUnit } from '../../../solver/model/defaults.ts';
import { turnedBox } from '../../mesh/axes.ts';
import { type MeshObstacle, placingOf } from '../../mesh/placing.ts';
import { documentStore, view } from '../../state/bench.ts';
import { type MeshStatus, meshes, meshKey, meshObstacles } from '../../state/meshes.ts';
import type { LengthUnit } from '../../state/view.ts';
import { MESH_FILES } from '../files/accepted.ts';
import { chooseFiles } from '../files/choose.ts';
import { taker } from '../files/taker.ts';
import { editModel } from '../points/edit.ts';
import { countWords, sidesOf, sizeWords, UNITS } from './choice.ts';

function words(mesh: MeshObstacle, status: MeshStatus | undefined, unit: LengthUnit): string {
  switch (status?.state) {
    case 'ready': {
      const { box, triangles } = status.mesh;
      const sides = sidesOf(turnedBox(box, placingOf(mesh)));
      return `${mesh.file}: ${countWords(triangles)} triangles, ${sizeWords(sides, unit)}`;
    }
    case 'missing':
      return `${mesh.file} is not at hand: not drawn, not checked`;
    case 'refused':
      return `${status.words} Not drawn, not checked`;
    default:
      return `${mesh.file} is being read`;
  }
}

/** For a file that does not state its unit, where the model does not either. */
function UnitSelect({ name }: { readonly name: string }) {
  return (
    <select
      aria-label={`Unit of ${name}`}
      className="points-text"
      value=""
      onChange={({ target }) => {
        const chosen = UNITS.find(({ unit }) => unit === target.value)?.unit;
        if (chosen === undefined) return;
        editModel((model) => ({
          ...model,
          obstacles: (model.obstacles ?? []).map((obstacle) =>
            obstacle.name === name && obstacle.shape === 'mesh'
              ? { ...obstacle, unit: chosen }
              : obstacle,
          ),
        }));
      }}
    >
      <option value="" disabled>
        Choose its unit
      </option>
      {UNITS.map(({ unit, name: unitName }) => (
        <option key={unit} value={unit}>
          {unitName}
        </option>
      ))}
    </select>
  );
}

function Entry({ mesh }: { readonly mesh: MeshObstacle }) {
  const status = useStore(meshes, ({ files }) => files.get(meshKey(mesh)));
  const unit = useStore(view, (state) => state.unit);
  const isTrouble = status?.state === 'missing' || status?.state === 'refused';
  return (
    <li data-trouble={isTrouble || undefined}>
      <strong>{mesh.name}</strong>
      <span>{words(mesh, status, unit)}</span>
      {meshUnit(mesh) === null && <UnitSelect name={mesh.name} />}
    </li>
  );
}

export function MeshFiles() {
  // As text, so that a drag of a point renders nothing here.
  const list = useStore(documentStore, ({ model }) => JSON.stringify(meshObstacles(model)));
  const all = JSON.parse(list) as readonly MeshObstacle[];
  return (
    <div className="mesh-files">
      {all.length > 0 && (
        <ul>
          {all.map((mesh) => (
            <Entry key={mesh.name} mesh={mesh} />
          ))}
        </ul>
      )}
      <button
        type="button"
        className="points-part points-part-add"
        onClick={() => chooseFiles(MESH_FILES, (files) => void taker.files(files))}
      >
        Open a mesh file…
      </button>
    </div>
  );
}
