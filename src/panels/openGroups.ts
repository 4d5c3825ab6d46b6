/** Which groups of readings are open, remembered from visit to visit. */

const KEY = 'armscribe.groups';
const FIRST: readonly string[] = [];

function remembered(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    return Array.isArray(kept) ? kept.filter((name) => typeof name === 'string') : FIRST;
  } catch {
    return FIRST;
  }
}

function remember(names: readonly string[]): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(names));
  } catch {
    // A browser that keeps nothing: the groups still open.
  }
}

function createOpenGroups() {
  let open = remembered();
  const listeners = new Set<() => void>();
  return {
    names: (): readonly string[] => open,
    subscribe: (listener: () => void): (() => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    toggle: (name: string): void => {
      open = open.includes(name) ? open.filter((other) => other !== name) : [...open, name];
      remember(open);
      for (const listener of listeners) listener();
    },
  };
}

export const openGroups = createOpenGroups();
