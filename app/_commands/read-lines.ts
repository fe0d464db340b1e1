import { createReadStream, createWriteStream, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { createInterface } from "node:readline";
import { finished, pipeline } from "node:stream/promises";

/** The lines of a file, one after the other; a last empty line is none. */
export async function* readLines(file: string): AsyncGenerator<string> {
  // A U+2028 inside a JSON text is no line end, and readline knows only the two that end lines here.
  const lines = createInterface({ input: createReadStream(file, "utf8"), crlfDelay: Number.POSITIVE_INFINITY });
  for await (const line of lines) yield line;
}

/** A folder for what is read twice; it goes when the work is over. */
export class Spool {
  readonly folder = mkdtempSync(path.join(tmpdir(), "proofband-"));

  file(name: string): string {
    return path.join(this.folder, name);
  }

  /** Keeps a stream as a file, so that it can be read twice without filling the memory. */
  async keep(stream: NodeJS.ReadableStream, name: string): Promise<string> {
    const file = this.file(name);
    await pipeline(stream, createWriteStream(file, { mode: 0o600 }));
    return file;
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** A writer of lines that waits when its reader is slow. */
export class LineWriter {
  readonly #stream: NodeJS.WritableStream;

  constructor(stream: NodeJS.WritableStream) {
    this.#stream = stream;
  }

  async write(line: string): Promise<void> {
    if (!this.#stream.write(`${line}\n`))
      await new Promise<void>((resolve) => this.#stream.once("drain", () => resolve()));
  }

  async end(): Promise<void> {
    this.#stream.end();
    await finished(this.#stream);
  }
}
