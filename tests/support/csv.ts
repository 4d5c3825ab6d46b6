/** Reads CSV as RFC 4180 has it, by a way of its own: letter by letter. */

/** Lines of fields; the last line break ends the last line. */
export function parseCsv(text: string): string[][] {
  const lines: string[][] = [];
  let line: string[] = [];
  let field = '';
  let isQuoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const letter = text[at]!;
    if (isQuoted && letter === '"' && text[at + 1] === '"') {
      field += '"';
      at += 1;
    } else if (letter === '"') isQuoted = !isQuoted;
    else if (!isQuoted && letter === ',') {
      line.push(field);
      field = '';
    } else if (!isQuoted && letter === '\n') {
      lines.push([...line, field]);
      line = [];
      field = '';
    } else field += letter;
  }
  return lines;
}
