import { expect, it } from "vitest";
import { changedFields, emptiedPlaces, parseReadBackForm } from "@/lib/ingest/parse-read-back-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const films = [
  { sessionId: "f1", swings: 5 },
  { sessionId: "f2", swings: 118 },
];
const read = (...entries: readonly (readonly [string, string])[]) => {
  const data = new FormData();
  for (const [name, value] of entries) data.append(name, value);
  return parseReadBackForm(data, films);
};

it("takes films that can be read, and how many swings of each", () => {
  expect(read(["films", "f2"], ["films", "f1"], ["each", "3"])).toEqual({
    kind: "ok",
    value: { sessionIds: ["f1", "f2"], each: 3 },
  });
  expect(read(["films", "f1"])).toMatchObject({ value: { each: null } });
});

it.each([
  [[], "films missing"],
  [[["films", "f3"]], "films not-a-choice"],
  [
    [
      ["films", "f1"],
      ["each", "0"],
    ],
    "each not-a-count",
  ],
  [
    [
      ["films", "f1"],
      ["films", "f2"],
    ],
    "films too-many-swings",
  ],
] as [[string, string][], string][])("%j is refused in words: %s", (entries, issue) => {
  const outcome = read(...entries);
  if (outcome.kind === "ok") throw new Error("taken");
  expect(outcome.issues.map(({ field, code }) => `${field} ${code}`)).toEqual([issue]);
  for (const { code, args } of outcome.issues) expect(words.say(`form.issue.${code}`, args)).toMatch(/\w/);
});

it("a place that came back empty is emptied; one that didn't come is left alone", () => {
  const data = new FormData();
  data.set("v.1", "81");
  data.set("v.2", " ");
  expect(emptiedPlaces(data, [1, 2, 3])).toEqual([2]);
});

it("a field that stands as the page came with it changes nothing, so that an older window empties no newer value", () => {
  const data = new FormData();
  for (const [name, value] of Object.entries({
    "v.1": "",
    "was.1": "",
    "v.2": "7",
    "was.2": "",
    "v.3": "",
    "was.3": "5",
  }))
    data.set(name, value);
  const changed = changedFields(data, [1, 2, 3]);
  expect(["v.1", "v.2", "v.3"].map((name) => changed.get(name))).toEqual([null, "7", ""]);
});
