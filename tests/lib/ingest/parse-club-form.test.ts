import { describe, expect, it } from "vitest";
import { CLUB_KINDS } from "@/lib/domain/club-group";
import { currentGroups, SHORT_LIST } from "@/lib/domain/club-grouping";
import type { ClubChange } from "@/lib/domain/regroup-clubs";
import { parseClubForm } from "@/lib/ingest/parse-club-form";
import { wordsFor } from "@/lib/words/catalogue";
import { sayClubs } from "@/lib/words/say-club";

const words = wordsFor("en");
const read = (change: ClubChange, entries: readonly (readonly [string, string])[]) => {
  const data = new FormData();
  for (const [name, value] of entries) data.append(name, value);
  return parseClubForm(data, { change, grouping: SHORT_LIST });
};
const issuesOf = (outcome: ReturnType<typeof read>) => {
  if (outcome.kind === "ok") return [];
  for (const issue of outcome.issues) expect(words.say(`form.issue.${issue.code}`, issue.args)).toMatch(/\w/);
  return outcome.issues.map(({ field, code }) => `${field} ${code}`);
};
const split = [
  ["group", "iron"],
  ["firstName", "Middle"],
  ["secondName", "Long"],
  ["secondClubs", "3i"],
  ["secondClubs", "4i"],
  ["why", "bought a set"],
] as const;

describe("a form that changes club groups (real FormData)", () => {
  it("a split takes every ticked club, the first part for sessions without one, and its reason", () => {
    const outcome = read("split", split);
    if (outcome.kind !== "ok") throw new Error(JSON.stringify(outcome));
    expect(outcome.value.change.to).toEqual(["iron-middle", "iron-long"]);
    const long = currentGroups(outcome.value.change.grouping).find(({ id }) => id === "iron-long");
    expect(long?.clubs).toEqual(["4i", "3i"]);
    expect(outcome.value.why).toBe("bought a set");
  });
  it.each([
    [split.slice(0, -1), ["why missing"]],
    [[...split, ["secondClubs", "driver"] as const], ["secondClubs not-a-choice"]],
    [[...split, ["rest", "third"] as const], ["rest not-a-choice"]],
    [split.filter(([name]) => name !== "secondClubs"), ["secondClubs regroup-no-club-moves"]],
    [[["group", "putter"] as const, ["why", "x"] as const], ["group regroup-not-a-group"]],
  ])("%j is refused in words: %j", (entries, issues) => expect(issuesOf(read("split", entries))).toEqual(issues));
  it("a merge needs two groups, a name and a reason; a new name needs itself only", () => {
    const entries = [
      ["first", "hybrid"],
      ["second", "wood"],
      ["name", "Long game"],
      ["goalsOf", "second"],
      ["why", "w"],
    ] as const;
    expect(read("merge", entries)).toMatchObject({
      kind: "ok",
      value: { change: { to: ["wood-long-game"] }, why: "w" },
    });
    expect(
      issuesOf(
        read("merge", [
          ["first", "wood"],
          ["second", "wood"],
        ]),
      ),
    ).toEqual(["why missing", "second regroup-same-group", "name regroup-name-missing"]);
    expect(
      read("rename", [
        ["group", "driver"],
        ["name", "Big stick"],
      ]),
    ).toMatchObject({ kind: "ok", value: { why: "" } });
    expect(
      issuesOf(
        read("rename", [
          ["group", "driver"],
          ["name", `x${"y".repeat(40)}`],
        ]),
      ),
    ).toEqual(["name too-long", "name regroup-name-missing"]);
  });
});

describe("the list of all groups", () => {
  const rows = (change: Readonly<Record<string, string>> = {}): readonly (readonly [string, string])[] =>
    Object.entries({
      ...Object.fromEntries(
        currentGroups(SHORT_LIST).flatMap(({ id, clubs }, at) => [
          [`name.${at + 1}`, ""],
          [`clubs.${at + 1}`, sayClubs(words, clubs)],
          [`goals.${at + 1}`, id],
        ]),
      ),
      ...change,
    });
  it("as the page prints it, is read back as it stands", () => {
    expect(read("arrange", rows())).toMatchObject({ kind: "ok", value: { change: { to: [...CLUB_KINDS] } } });
  });
  it("a word for a kind stands for all its clubs; wedges are the four, without the 9-iron", () => {
    const outcome = read(
      "arrange",
      rows({ "name.1": "Wedges", "clubs.1": "wedges", "name.2": "Irons and nine", "clubs.2": "irons; 9-iron" }),
    );
    if (outcome.kind !== "ok") throw new Error(JSON.stringify(outcome));
    expect(
      currentGroups(outcome.value.change.grouping)
        .slice(0, 2)
        .map(({ clubs }) => clubs.length),
    ).toEqual([4, 9]);
  });
  it.each([
    [{ "clubs.4": "woods, putter" }, ["clubs.4 unknown-club"]],
    [{ "clubs.4": "" }, ["clubs.5 regroup-clubs-left-over"]],
    [{ "clubs.6": "driver", "name.6": "Tee" }, ["clubs.6 regroup-club-twice"]],
    [{ "goals.2": "putter" }, ["goals.2 not-a-choice"]],
  ])("%j is refused in words: %j", (change, issues) => expect(issuesOf(read("arrange", rows(change)))).toEqual(issues));
});
