/** Whether this browser draws WebGL by the processor: such drawing is bound by pixels, and its smoothing of edges is dear. */

/** Names software renderers give themselves. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

export function isSoftwareName(renderer: string): boolean {
  return SOFTWARE.test(renderer);
}

/** Asks a small context of its own, which is given back at once: smoothing must be chosen before the real one exists. */
export function drawsInSoftware(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  if (context === null) return false;
  const names = context.getExtension('WEBGL_debug_renderer_info');
  const name = context.getParameter(names?.UNMASKED_RENDERER_WEBGL ?? context.RENDERER);
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return isSoftwareName(String(name));
}
