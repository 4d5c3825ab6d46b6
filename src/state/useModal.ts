/** A dialog that is open as long as it is mounted. */
import { type RefObject, useEffect, useRef } from 'react';

/**
 * Opens the dialog it is given to as a modal one. React's strict mode mounts twice, so that a first close is heard when
 * the dialog is open again: `isClosed` tells a real one.
 */
export function useModal(): {
  readonly dialog: RefObject<HTMLDialogElement | null>;
  readonly isClosed: () => boolean;
} {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return { dialog, isClosed: () => dialog.current?.open !== true };
}
