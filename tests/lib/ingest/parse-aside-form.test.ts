import { describe, expect, it } from "vitest";
import { asideChoice, parseAsideForm } from "@/lib/ingest/parse-aside-form";

function form(entries: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  return data;
}

describe("the form that sets a session aside or brings it back", () => {
  it("says which way, what, and why", () => {
    expect(parseAsideForm(form({ what: asideChoice("aside", "session"), why: "rain on the lens" }))).toEqual({
      kind: "ok",
      value: { way: "aside", part: "session", why: "rain on the lens" },
    });
    expect(parseAsideForm(form({ what: "back:face-on", why: "it was dry" }))).toMatchObject({
      value: { way: "back", part: "face-on" },
    });
  });

  it.each([
    [{ what: "aside:session" }, ["why"]],
    [{ why: "rain" }, ["what"]],
    [{ what: "aside:moon", why: "rain" }, ["what"]],
    [{ what: "session", why: "rain" }, ["what"]],
    [{ what: "aside:session", why: "x".repeat(201) }, ["why"]],
    [{ what: "aside:session", why: "   " }, ["why"]],
    [{ what: "aside:session", why: "a\u202eb" }, ["why"]],
    [{}, ["what", "why"]],
  ])("%j is wrong in %j", (entries, fields) => {
    const parsed = parseAsideForm(form(entries));
    if (parsed.kind === "ok") throw new Error("it was taken");
    expect(parsed.issues.map((issue) => issue.field)).toEqual(fields);
  });
});
