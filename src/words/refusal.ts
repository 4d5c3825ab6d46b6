/** A refusal of the model's file format as it reads beside the field that was typed into: without file and path, in people's numbers. */

const PARTS = /^(?:.*?: )?([^\s:]+|\([^)]*\)): found (.*), wanted (.*)$/s;

const NUMBERS: readonly (readonly [told: string, said: string])[] = [
  ['a number smaller than 1e5 in size', 'a number between −100,000 and 100,000'],
  ['below 1e5', 'below 100,000'],
];

/** "model.wheel[1]" or "model.wheel.1" → "model.wheel.1". */
function plain(path: string): string {
  return path.replace(/\[(\d+)\]/g, '.$1');
}

/** "−8 is not taken: wanted is a number above 0 …"; what is wrong elsewhere than at `path` keeps its place. */
export function refusalWords(refusal: string, path: string): string {
  const [, at, found, wanted] = PARTS.exec(refusal) ?? [];
  if (at === undefined || found === undefined || wanted === undefined) return refusal;
  const known = NUMBERS.reduce((text, [told, said]) => text.replace(told, said), wanted);
  const place = plain(at);
  const isHere = place === path || place.startsWith(`${path}.`);
  const what = found.replace(/ \(text\)$/, '').replace(/^-/, '−');
  return `Not taken${isHere ? '' : `, for ${at}`}: found ${what}, wanted ${known}.`;
}
