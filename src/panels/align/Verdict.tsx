/** Whether what is wanted is reached; where it is not, why, and what is nearest. */
import {
  type AlignedAngles,
  type Alignment,
  hardwareWords,
  type PivotHardware,
} from '../../../solver/index.ts';
import { angle, fixed } from '../../words/format.ts';
import { Icon } from '../icons.tsx';
import { ANGLES } from './setPose.ts';

function anglesWords(angles: AlignedAngles): string {
  return ANGLES.map((key) => `${key} ${angle(angles[key])}`).join(', ');
}

function listed(words: readonly string[]): string {
  return words.length < 2
    ? (words[0] ?? '')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function end(name: PivotHardware, setting: number): string {
  if (name.endsWith('Cam')) return `the ${hardwareWords(name)} runs out at ${fixed(setting, 0)}°`;
  return `the ${hardwareWords(name)} are at their ${setting < 1e-6 ? 'least' : 'most'}`;
}

/** Why what is wanted cannot be had, in words. */
function whyNot({ runsOut, lacks, after, fails }: Alignment): string {
  const ends = runsOut.map((name) => end(name, after.settings[name] ?? 0));
  const parts = [
    ...(ends.length > 0 ? [listed(ends)] : []),
    ...(lacks.length > 0 ? [`nothing here is left to set ${listed(lacks)} with`] : []),
    ...(fails === null ? [] : ['with other settings the corner comes apart']),
  ];
  const text = parts.join('; ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** Whether it is reached, and what is nearest where it is not. */
export function Verdict({ found }: { readonly found: Alignment }) {
  const { angles, isWithin } = found.after;
  if (found.reached && found.work.length === 0) {
    return (
      <p className="align-verdict" data-state="clear">
        <Icon name="clear" /> It stands as wanted; there is nothing here to set it with.
      </p>
    );
  }
  if (found.reached) {
    return (
      <p className="align-verdict" data-state="clear">
        <Icon name="clear" /> Reached, with the least turning of cams there is.
      </p>
    );
  }
  const isFine = isWithin === true;
  return (
    <>
      <p className="align-verdict" data-state={isFine ? 'clear' : 'touch'}>
        <Icon name={isFine ? 'clear' : 'touch'} />
        {isFine ? 'Not exactly, but within what may be off it.' : 'Cannot be reached.'}
      </p>
      <p>
        {whyNot(found)}
        {angles === null ? ' The corner does not stand.' : ` Nearest: ${anglesWords(angles)}.`}
      </p>
    </>
  );
}
