import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { CLUB_KINDS } from "@/lib/domain/club-group";
import { FIELDS } from "@/lib/ingest/column-word";
import { FILE_UNITS } from "@/lib/ingest/parse-unit";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const folder = path.join(import.meta.dirname, "../../../lib/ingest");
const source = readdirSync(folder)
  .filter((name) => !/form|track|noise|json|own/.test(name))
  .map((name) => readFileSync(path.join(folder, name), "utf8"))
  .join("\n");

const found = (pattern: RegExp): readonly string[] =>
  [...new Set([...source.matchAll(pattern)].map((match) => match[1] ?? ""))].sort();
const unwritten = (keys: readonly string[]) => keys.filter((key) => !words.has(key));

describe("every word of an import is written", () => {
  it("notes", () => {
    const notes = found(/\.note\(\s*"([a-z0-9-]+)"/g);
    expect(notes.length).toBeGreaterThan(20);
    expect(unwritten(notes.map((code) => `import.note.${code}`))).toEqual([]);
  });
  it("issues", () => {
    const issues = [...found(/issue\(\{\s*code: "([a-z0-9-]+)"/g), ...found(/#?refuse\((?:row, )?"([a-z-]+)"/g)];
    expect(issues.length).toBeGreaterThan(25);
    expect(unwritten(issues.map((code) => `import.issue.${code}`))).toEqual([]);
  });
  it("options", () => {
    const options = found(/option\("([a-z0-9-]+)"(?:, \{\}|, args|, \{ [a-z: ]+ \})?(?:\)|, \{ name)/g);
    expect(options.length).toBeGreaterThan(10);
    const own: readonly string[] = ["neutral", "picture", ...CLUB_KINDS];
    expect(unwritten(options.filter((code) => !own.includes(code)).map((code) => `import.option.${code}`))).toEqual([]);
  });
  it("fields, units and reasons of columns", () => {
    expect(unwritten(FIELDS.map((field) => `import.field.${field}`))).toEqual([]);
    expect(unwritten(FILE_UNITS.map((unit) => `import.unit.${unit}`))).toEqual([]);
    const reasons = ["unknown", "blank", "doubled", "other-form", "derived"];
    expect(unwritten(reasons.map((why) => `import.left-out.${why}`))).toEqual([]);
  });
});
