import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { isForFamily } from "./family-keys";

/** What stands in a message between its arguments: at odd depths of braces stands their syntax, at even ones text. */
function literals(message: string): readonly string[] {
  const pieces = [""];
  let depth = 0;
  for (const sign of message) {
    if (sign === "{" || sign === "}") {
      depth += sign === "{" ? 1 : -1;
      pieces.push("");
    } else if (depth % 2 === 0) pieces.push(`${pieces.pop() ?? ""}${sign}`);
  }
  return pieces.map((piece) => piece.trim());
}

/** The English words between the arguments of all that a family reads: pieces of two words and more, ten letters at least. @param root of the project */
export function englishPieces(root: string): readonly string[] {
  const folder = path.join(root, "lib", "words", "messages", "en");
  const messages = readdirSync(folder).flatMap((file) =>
    Object.entries(JSON.parse(readFileSync(path.join(folder, file), "utf8")) as Record<string, string>),
  );
  const pieces = messages.filter(([key]) => isForFamily(key)).flatMap(([, message]) => literals(message));
  return [...new Set(pieces)].filter((piece) => piece.length >= 10 && piece.includes(" "));
}
