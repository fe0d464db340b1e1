import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { parseGroupForm } from "@/lib/ingest/parse-group-form";
import { parseSessionForm } from "@/lib/ingest/parse-session-form";
import { wordsFor } from "@/lib/words/catalogue";

const form = (entries: Readonly<Record<string, string>>): FormData => {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  return data;
};
const rules = { today: "2026-09-12", fundamentals: BUILT_IN, grouping: SHORT_LIST, reader: "Coach" };
const context = {
  ...rules,
  groupId: "0123456789ab",
  students: [
    { id: "eli", birthYear: 2012, hand: "left" },
    { id: "nia", birthYear: 2014, hand: "right" },
  ],
} as const;
const shared = { day: "2026-09-01", clubGroup: "iron", "squareness.face-on": "square" };
const good = { ...shared, "r.@eli.1.hinge": "88", "r.@nia.1.hinge": "80", "s.nia.solid": "3", "s.nia.balls": "5" };
const read = (change: Readonly<Record<string, string>>) => parseGroupForm(form({ ...good, ...change }), context);
const problems = (change: Readonly<Record<string, string>>) => {
  const outcome = read(change);
  if (outcome.kind !== "issues") throw new Error("taken");
  for (const issue of outcome.issues) expect(wordsFor("en").has(`form.issue.${issue.code}`), issue.code).toBe(true);
  return outcome.issues.map((issue) => `${issue.field} ${issue.code}`);
};

describe("a group session's form (real FormData)", () => {
  it("gives each student a session of one day, group and film check, with the own readings and shots", () => {
    const outcome = read({});
    if (outcome.kind !== "ok") throw new Error("refused");
    expect(outcome.value.map(({ studentId }) => studentId)).toEqual(["eli", "nia"]);
    const [eli, nia] = outcome.value.map(({ session }) => session);
    expect(eli?.swings[0]?.readings[0]?.value).toBe(88);
    expect(nia).toMatchObject({ solid: 3, balls: 5, day: "2026-09-01", groupId: "0123456789ab" });
    expect(eli?.solid).toBeNull();
  });

  it("an unusual value passes for the student of whom it was said to be right, and for nobody else", () => {
    const both = { "r.@eli.1.hinge": "170", "r.@nia.1.hinge": "170", "ok.r.@eli.1.hinge": "170" };
    expect(problems(both)).toEqual(["r.@nia.1.hinge unusual"]);
    expect(read({ ...both, "ok.r.@nia.1.hinge": "170" }).kind).toBe("ok");
  });

  it("all films of a view share one placement: one of this group, or the one that is named", () => {
    const labels = (change: Readonly<Record<string, string>>) => {
      const outcome = read(change);
      return outcome.kind === "ok"
        ? [...new Set(outcome.value.flatMap(({ session }) => session.captures.map((each) => each.placementLabel)))]
        : [];
    };
    expect(labels({})).toEqual(["group 2026-09-01 01234567"]);
    expect(
      labels({
        "placement.face-on": "same",
        "placementLabel.face-on": "bench",
        "placement.down-the-line": "same",
        "placementLabel.down-the-line": "bench",
      }),
    ).toEqual(["bench"]);
  });

  it("a view that was not filmed has no film at anybody, and what is filled in for it is asked back once", () => {
    const outcome = read({ "notFilmed.down-the-line": "yes" });
    if (outcome.kind !== "ok") throw new Error("refused");
    for (const { session } of outcome.value) expect(session.captures.map((film) => film.view)).toEqual(["face-on"]);
    const both = { "r.@eli.1.foot-line": "2", "r.@nia.1.foot-line": "1", "film.down-the-line": "shelf 9" };
    expect(problems({ "notFilmed.down-the-line": "yes", ...both })).toEqual([
      "notFilmed.down-the-line not-filmed-but-said",
    ]);
    expect(problems({ "notFilmed.face-on": "yes" })).toEqual(["notFilmed.face-on not-filmed-but-said"]);
  });

  it("what is wrong for all is said once, what is wrong for one at the own field", () => {
    expect(problems({ day: "2026-10-01" })).toEqual(["day future-date"]);
    expect(problems({ "r.@nia.1.hinge": "eighty" })).toEqual(["r.@nia.1.hinge not-a-number"]);
    expect(problems({ "s.nia.solid": "6" })).toEqual(["s.nia.solid more-solid-than-balls"]);
  });

  it("a student without a reading is asked about, and left out only where the form says so", () => {
    expect(problems({ "r.@eli.1.hinge": "" })).toEqual(["s.eli.absent nothing-read"]);
    const outcome = read({ "r.@eli.1.hinge": "", "s.eli.absent": "yes" });
    expect(outcome.kind === "ok" && outcome.value.map(({ studentId }) => studentId)).toEqual(["nia"]);
    expect(problems({ "s.eli.absent": "yes" })).toEqual(["s.eli.absent absent-but-read"]);
    expect(
      problems({
        "r.@eli.1.hinge": "",
        "r.@nia.1.hinge": "",
        "s.eli.absent": "yes",
        "s.nia.absent": "yes",
      }),
    ).toEqual(["students nobody"]);
  });

  it("a sighting's side is turned for each student's own hand", () => {
    const outcome = read({ "plumb.face-on": "2", "plumbSide.face-on": "left" });
    if (outcome.kind !== "ok") throw new Error("refused");
    const [eli, nia] = outcome.value.map(
      ({ session }) => session.captures.find((each) => each.view === "face-on")?.seen,
    );
    expect(eli?.plumbLean).toBe(-(nia?.plumbLean ?? Number.NaN));
  });

  it("reads each student as a form of one would be read, whatever is typed", () =>
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom("88", "n/m", "x", "", "−3,5", "999"), { minLength: 4, maxLength: 4 }),
        (typed) => {
          const cells = ["r.1.hinge", "r.2.hinge", "r.1.setup-tilt", "r.9.foot-line"];
          const own = Object.fromEntries(cells.map((name, at) => [name, typed[at] ?? ""]));
          const alone = parseSessionForm(form({ ...shared, ...own }), { ...rules, birthYear: 2012, hand: "left" });
          const named = Object.fromEntries(
            Object.entries(own).map(([name, value]) => [name.replace("r.", "r.@eli."), value]),
          );
          const group = parseGroupForm(form({ ...shared, ...named, "r.@nia.1.hinge": "80" }), context);
          expect(group.kind).toBe(alone.kind);
          if (group.kind === "ok" && alone.kind === "ok")
            expect(group.value[0]?.session.swings).toEqual(alone.value.swings);
        },
      ),
    ));
});
