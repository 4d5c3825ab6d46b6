/** How much larger than its own pixels an element is drawn: App.css enlarges the panels of a large window. */
export function zoomOf(element: HTMLElement): number {
  return (element as { currentCSSZoom?: number }).currentCSSZoom ?? 1;
}
