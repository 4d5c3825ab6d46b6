/** Hands work to a person as a file. */
import { type Model, writeModel } from '../../solver/index.ts';

/** Longest name made for a file, its ending not counted. */
const LONGEST_NAME = 60;

/** Names some systems refuse, whatever their ending. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** Letters and digits of any script, hyphens between; empty where a name has none. */
function plainName(name: string): string {
  const words = name
    .normalize('NFKC')
    .toLowerCase()
    .split(/[^\p{L}\p{N}\p{M}]+/u)
    .filter((word) => word !== '');
  return [...words.join('-')].slice(0, LONGEST_NAME).join('').replace(/-+$/, '');
}

/** A file name from a model's name, `.json` at the end. */
export function modelFileName(name: string): string {
  const whole = plainName(name);
  if (whole === '') return 'corner.json';
  return RESERVED.test(whole) ? `${whole}-corner.json` : `${whole}.json`;
}

/** What a model is called in the names of files, without an ending. */
export function plainFileName(name: string): string {
  return plainName(name) || 'corner';
}

/** The file name of a model's swept space. */
export function sweptFileName(name: string, ending: 'stl' | 'glb'): string {
  return `${plainFileName(name)}-tyre-swept.${ending}`;
}

/** The file name of one of a model's papers or their tables. */
export function paperFileName(name: string, key: string, ending: 'html' | 'csv'): string {
  return `${plainName(name) || 'corner'}-${key}.${ending}`;
}

/** Lets the browser save a text under a name. */
export function saveText(text: string, fileName: string, type = 'text/plain'): void {
  saveBlob(new Blob([text], { type }), fileName);
}

/** The same with bytes. */
export function saveBytes(bytes: Uint8Array<ArrayBuffer>, fileName: string, type: string): void {
  saveBlob(new Blob([bytes], { type }), fileName);
}

function saveBlob(blob: Blob, fileName: string): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser reads the blob after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Saves a model as the text of a model file. */
export function saveModel(model: Model): void {
  saveText(writeModel(model), modelFileName(model.name), 'application/json');
}
