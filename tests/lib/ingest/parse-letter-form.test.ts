import { describe, expect, it } from "vitest";
import { OWN_LETTERS, parseLetterForm } from "@/lib/ingest/parse-letter-form";

const OFFERED = ["good", "changed-1", "task"];
const read = (fields: Readonly<Record<string, string>>) => {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.set(name, value);
  return parseLetterForm(data, OFFERED);
};

describe("the form of a season letter", () => {
  it("untouched it is every sentence as offered, without a paragraph of the coach’s own", () => {
    expect(read({})).toEqual({ kind: "ok", value: { order: OFFERED, own: "", place: "last" } });
  });

  it("orders the sentences by their places, those of one place as offered, and leaves out those without one", () => {
    const value = (fields: Readonly<Record<string, string>>) => {
      const found = read(fields);
      return found.kind === "ok" ? found.value.order : null;
    };
    expect(value({ "place.good": "3", "place.task": "1" })).toEqual(["task", "changed-1", "good"]);
    expect(value({ "place.good": "2" })).toEqual(["good", "changed-1", "task"]);
    expect(value({ "place.good": "", "place.task": "0" })).toEqual(["changed-1"]);
  });

  it("keeps the lines of the coach’s own paragraph, as a browser sends them too", () => {
    expect(read({ own: " She listens.\r\nMore next year. ", ownPlace: "first" })).toMatchObject({
      value: { own: "She listens.\nMore next year.", place: "first" },
    });
  });

  it.each([
    [{ "place.good": "4" }, "place.good not-a-choice"],
    [{ "place.task": "-1" }, "place.task not-a-choice"],
    [{ "place.task": "1e1" }, "place.task not-a-choice"],
    [{ own: "a".repeat(OWN_LETTERS + 1) }, "own too-long"],
    [{ own: "a\u202eb" }, "own hidden-mark"],
    [{ ownPlace: "middle" }, "ownPlace not-a-choice"],
  ])("refuses %o", (fields, wrong) => {
    const found = read(fields as Readonly<Record<string, string>>);
    expect(found.kind === "issues" ? found.issues.map(({ field, code }) => `${field} ${code}`) : []).toEqual([wrong]);
  });
});
