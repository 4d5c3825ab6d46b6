/**
 * When the first picture is drawn, or it is known that there is none to wait for. What the first picture does not need is
 * loaded behind it: `lazy(() => afterFirstPicture(() => import('./Late.tsx')))`.
 */
let settle: () => void = () => undefined;
const settled = new Promise<void>((resolve) => {
  settle = resolve;
});

/** Says that the first picture is drawn, or that there will be none. Saying it again does nothing. */
export function settleFirstPicture(): void {
  settle();
}

/** Runs `load` once the first picture is there. */
export function afterFirstPicture<T>(load: () => Promise<T>): Promise<T> {
  return settled.then(load);
}
