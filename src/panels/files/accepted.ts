/** Endings the file chooser shows. */
import { MESH_ENDINGS } from '../../mesh/names.ts';

export const MESH_FILES = MESH_ENDINGS.map((ending) => `.${ending}`).join(',');
export const ALL_FILES = `.json,application/json,${MESH_FILES}`;
