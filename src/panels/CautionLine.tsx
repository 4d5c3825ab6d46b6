/** One line of caution that opens the whole text. */
import { openSheet } from './sheets.ts';

export function CautionLine() {
  return (
    <button type="button" className="caution-line" onClick={() => openSheet('cautions')}>
      Rigid parts, unloaded; strength is not checked. <u>Cautions</u>
    </button>
  );
}
