/** A part of the page that is loaded when it is wanted; where that fails, a sentence in its place says so. */
import { Component, type ComponentType, lazy, type ReactNode, Suspense } from 'react';

type Load = () => Promise<{ readonly default: ComponentType }>;

const _bodies = new WeakMap<Load, ComponentType>();

/** One lazy component for each way of loading, however often it is rendered. */
function bodyOf(load: Load): ComponentType {
  const known = _bodies.get(load);
  if (known !== undefined) return known;
  const made = lazy(load);
  _bodies.set(load, made);
  return made;
}

class Fence extends Component<{ readonly children: ReactNode }> {
  override state = { isBroken: false };

  static getDerivedStateFromError(): { isBroken: boolean } {
    return { isBroken: true };
  }

  override render(): ReactNode {
    if (!this.state.isBroken) return this.props.children;
    return (
      <p className="late-broken" role="alert">
        This part could not be loaded or met a fault. The rest goes on working; reload the page to
        try again.
      </p>
    );
  }
}

/** `load` must be the same function at each render; another one needs another key. */
export function Late({ load }: { readonly load: Load }) {
  const Body = bodyOf(load);
  return (
    <Fence>
      <Suspense fallback={null}>
        <Body />
      </Suspense>
    </Fence>
  );
}
