/** The surfaces of a rigid body: one mesh for what is painted, one for each material apart. */
import { useContext, useEffect, useMemo } from 'react';
import type { BufferGeometry, Material } from 'three';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { DesignContext } from '../design.ts';
import {
  type Assembly,
  disposePieces,
  type Pieces as PieceSet,
  toOnePiece,
  toPieces,
} from '../geometry/solid.ts';
import { APART } from '../materialNames.ts';
import { createMaterials, type Finish } from '../materials.ts';
import { isLit, type PartName } from '../partNames.ts';

export const materials = createMaterials(view.getState().theme);

/** The material of a part in the design it belongs to, lit when its measure is asked about. */
export function useMaterial(name: Finish, part: PartName, ghost = false): Material {
  const design = useContext(DesignContext);
  const lit = useStore(view, (state) => isLit(part, state.lit));
  if (design === 'held') return materials.held;
  if (ghost) return materials.ghost[name];
  return lit ? materials.lit[name] : materials.plain[name];
}

/**
 * Builds a body's surfaces when `inputs` change in value (not in identity: an edit makes every part of a model anew),
 * and frees the old ones.
 */
export function usePieces(build: () => Assembly, ...inputs: readonly unknown[]): PieceSet {
  const key = JSON.stringify(inputs);
  const held = useContext(DesignContext) === 'held';
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` holds all that `build` reads.
  const pieces = useMemo(() => (held ? toOnePiece(build()) : toPieces(build())), [key, held]);
  useEffect(() => () => disposePieces(pieces), [pieces]);
  return pieces;
}

interface PieceProps {
  readonly part: PartName;
  readonly name: Finish;
  readonly geometry: BufferGeometry;
  readonly ghost: boolean;
}

/** What throws a shadow: light goes through the others, or they lie inside a body. */
const SHADOWED: readonly Finish[] = ['painted', 'tyre', 'webbing'];

function Piece({ part, name, geometry, ghost }: PieceProps) {
  const material = useMaterial(name, part, ghost);
  const isSolid = !material.transparent;
  return (
    <mesh
      name={part}
      geometry={geometry}
      material={material}
      castShadow={isSolid && SHADOWED.includes(name)}
      receiveShadow={isSolid}
    />
  );
}

const FINISHES: readonly Finish[] = ['painted', ...APART];

export function Pieces({
  part,
  pieces,
  ghost = false,
}: {
  part: PartName;
  pieces: PieceSet;
  ghost?: boolean;
}) {
  return FINISHES.map((name) => {
    const geometry = pieces[name];
    return geometry === undefined ? null : (
      <Piece key={name} part={part} name={name} geometry={geometry} ghost={ghost} />
    );
  });
}
