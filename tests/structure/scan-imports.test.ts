// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the planted sources hold templates of their own
import { describe, expect, it } from "vitest";
import { scanImports } from "./scan-imports";

describe("scanImports", () => {
  it.each([
    ['import a from "x";', "x", "value", ["default"]],
    ['import * as a from "x";', "x", "value", ["*"]],
    ['import a, { b as c, type D } from "x";', "x", "value", ["default", "b", "D"]],
    ['import { type D } from "x";', "x", "value", ["D"]],
    ['import type { D } from "x";', "x", "type", ["D"]],
    ['import type D from "x";', "x", "type", ["default"]],
    ['import type from "x";', "x", "value", ["default"]],
    ['import "x";', "x", "value", []],
    ['export * from "x";', "x", "value", ["*"]],
    ['export { a } from "x";', "x", "value", ["a"]],
    ['export type { A } from "x";', "x", "type", ["A"]],
    ['const a = await import("x");', "x", "value", ["*"]],
    ["const a = await import(`x`);", "x", "value", ["*"]],
    ['const a = require("x");', "x", "value", ["*"]],
    ["import(name);", "(computed)", "value", ["*"]],
    ["import(`x/${name}`);", "(computed)", "value", ["*"]],
    ['import {\n  a, // from "y"\n  b,\n} from "x";', "x", "value", ["a", "b"]],
  ] as const)("%s", (source, from, kind, names) => {
    expect(scanImports(source, "script")).toMatchObject([{ from, kind, names }]);
  });

  it.each([
    '// import a from "x";',
    '/* import("x") */',
    "const a = 'import b from \"x\"';",
    'const a = `import "x"`;',
    "const a = import.meta.url;",
    "export { a };",
    "export type A = { from: string };",
    'export const a = "from";',
    'const a = /import "x"/;',
    'a.import("x");',
  ])("sees no import in %s", (source) => {
    expect(scanImports(source, "script")).toEqual([]);
  });

  it("says on which line, past comments and templates", () => {
    expect(scanImports('/*\n*/\nconst a = `\n${b}\n`;\nimport "x";', "script")[0]?.line).toBe(6);
  });

  it("sees the import under markup", () => {
    const source = 'const a = <p title="import">{n > 0 ? <b>it isn&apos;t</b> : null}</p>;\nimport b from "x";';
    expect(scanImports(source, "markup")).toMatchObject([{ from: "x", line: 2 }]);
  });
});
