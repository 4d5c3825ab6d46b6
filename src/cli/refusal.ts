/** Bad input: one line for standard error, exit status 2. Thrown before anything is written. */
export class BadInput extends Error {
  readonly lines: readonly string[];

  constructor(...lines: string[]) {
    super(lines.join('\n'));
    this.lines = lines;
  }
}

/** What a verb answers with: 0 done, 1 done and the answer is "no". */
export type Status = 0 | 1;

/** Writes a piece of the answer to standard output. */
export type Write = (text: string) => void;

/** A verb of the command line. */
export interface Verb {
  readonly name: string;
  /** One line of the list of verbs. */
  readonly summary: string;
  /** What `--help` prints. */
  readonly help: string;
  readonly run: (words: readonly string[], write: Write) => Status;
}
