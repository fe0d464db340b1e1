import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** What a text looks like in base64, whichever of the three places it begins at; without the ends, which depend on its neighbours. */
function inBase64(text: string): Buffer[] {
  return [0, 1, 2].map((offset) => {
    const whole = Buffer.concat([Buffer.alloc(offset), Buffer.from(text)])
      .toString("base64")
      .replace(/=+$/, "");
    return Buffer.from(whole.slice(offset === 0 ? 0 : offset + 1, -2));
  });
}

/** A text as it may lie in a file. */
export function formsOf(text: string): Buffer[] {
  const utf16 = Buffer.from(text, "utf16le");
  return [Buffer.from(text), utf16, Buffer.from(utf16).swap16(), ...inBase64(text)];
}

/** All files of a folder and of those within it. */
export function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name));
}

/** Names of files in which a text lies, in UTF-8, in UTF-16 of both orders or in base64; the names of the files count too. */
export function findBytes(folder: string, texts: readonly string[]): string[] {
  const forms = texts.flatMap((text) => formsOf(text).map((bytes) => ({ text, bytes })));
  return filesIn(folder).flatMap((file) => {
    const content = Buffer.concat([readFileSync(file), Buffer.from(path.basename(file))]);
    return forms.filter(({ bytes }) => content.includes(bytes)).map(({ text }) => `${path.basename(file)}: ${text}`);
  });
}
