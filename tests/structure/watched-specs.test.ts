import { expect, it } from "vitest";
import { readProject } from "./project-files";

// J6: no spec runs unwatched, so that the whole run in the browser is one without a violation or a request to the outside.

it("every spec of the browser's run takes its test from tests/e2e/watched.ts", () => {
  const specs = readProject().filter(({ name }) => name.endsWith(".spec.ts"));
  expect(specs.length).toBeGreaterThan(15);
  const unwatched = specs.filter(
    ({ text }) =>
      !/import \{[^}]*\btest\b[^}]*\} from "(?:\.|\.\.\/e2e)\/watched"/.test(text) ||
      /import \{[^}]*\btest\b[^}]*\} from "playwright\/test"/.test(text),
  );
  expect(unwatched.map(({ name }) => name)).toEqual([]);
});
