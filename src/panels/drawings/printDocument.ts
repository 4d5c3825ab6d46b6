/** Prints a document of its own, in a frame that runs no scripts of it. */
export function printDocument(text: string): void {
  document.querySelector('iframe[data-print]')?.remove();
  const frame = document.createElement('iframe');
  frame.dataset['print'] = '';
  frame.title = 'What is printed';
  // Same origin, so that the page may have it printed; no scripts, so that nothing in it runs.
  frame.setAttribute('sandbox', 'allow-same-origin allow-modals');
  frame.style.cssText = 'position:fixed;width:0;height:0;border:0;visibility:hidden';
  frame.srcdoc = text;
  frame.addEventListener('load', () => frame.contentWindow?.print(), { once: true });
  document.body.append(frame);
}
