/** Opens the file chooser. A fresh input each time, so that the same file can be chosen twice. */
export function chooseFiles(accept: string, take: (files: Iterable<File>) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  input.multiple = true;
  input.addEventListener('change', () => take(input.files ?? []));
  input.click();
}
