/** Pairs of parts as people call them. */
import { partWords } from '../../solver/stops/limitWords.ts';

export { partWords };

/** "Tie rod to wheel". */
export function pairWords([one, other]: readonly [string, string]): string {
  const text = `${partWords(one)} to ${partWords(other)}`;
  return text.charAt(0).toUpperCase() + text.slice(1);
}
