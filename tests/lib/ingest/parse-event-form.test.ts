import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { parseEventForm } from "@/lib/ingest/parse-event-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const good = [
  ["kind", "new-club"],
  ["day", "2026-09-01"],
  ["note", "an inch longer"],
] as const;
const read = (...more: readonly (readonly [string, string])[]) => {
  const data = new FormData();
  for (const [name, value] of [...good, ...more]) data.set(name, value);
  for (const [name, value] of more) if (name === "rebaselines") data.append(name, value);
  return parseEventForm(data, { today: "2026-09-12", fundamentals: BUILT_IN });
};

describe("an event's form (real FormData)", () => {
  it("a new set is an event of its day; nothing begins anew unless it is ticked", () => {
    expect(read()).toEqual({
      kind: "ok",
      value: { kind: "new-club", day: "2026-09-01", note: "an inch longer", heightCm: null, rebaselines: [] },
    });
    expect(read(["kind", "growth"], ["heightCm", "151,5"], ["rebaselines", "hinge"])).toMatchObject({
      kind: "ok",
      value: { kind: "growth", heightCm: 151.5, rebaselines: ["hinge"] },
    });
  });
  it.each([
    [["day", "2026-09-13"], "day future-date"],
    [["day", "yesterday"], "day not-a-date"],
    [["kind", "season-start"], "kind not-a-choice"],
    [["heightCm", "15"], "heightCm not-a-height"],
    [["heightCm", "tall"], "heightCm not-a-height"],
    [["rebaselines", "putting"], "rebaselines not-a-choice"],
    [["note", "n".repeat(301)], "note too-long"],
  ] as const)("%j is refused in words: %s", (change, issue) => {
    const outcome = read(change);
    if (outcome.kind === "ok") throw new Error("taken");
    expect(outcome.issues.map(({ field, code }) => `${field} ${code}`)).toEqual([issue]);
    for (const { code, args } of outcome.issues) expect(words.say(`form.issue.${code}`, args)).toMatch(/\w/);
  });
});
