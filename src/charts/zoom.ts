/** How much larger than its own pixels an element that is shown is drawn: App.css enlarges the panels of a large window. */
export function zoomOf(element: HTMLElement | null): number {
  return (element as { currentCSSZoom?: number } | null)?.currentCSSZoom ?? 1;
}
