import { expect, it } from "vitest";
import type { Told } from "@/lib/domain/told";
import { buildToldList } from "@/lib/report/told-list";
import { wordsFor } from "@/lib/words/catalogue";

const told = (id: string, over: Partial<Told> = {}): Told => ({
  ...{ id, clubGroup: "iron", kind: "message", text: `Text ${id}.`, findings: [], day: "2026-05-03", who: "Bo" },
  ...{ recordedAt: "2026-05-03T10:00:00.000Z", voidedAt: null, ...over },
});
const list = (...rows: readonly Told[]) =>
  buildToldList(wordsFor("en"), rows, { studentId: "s1", lang: "en", dayOf: (instant) => instant.slice(0, 10) });

it("everything that was told, latest first, word for word, each with the button that takes it back or puts it back", () => {
  expect(list()).toBeNull();
  const found = list(told("a"), told("b", { kind: "letter", voidedAt: "2026-05-04T10:00:00.000Z" }));
  expect(found?.heading).toBe("One text was told");
  expect(found?.entries.map(({ heading, state, text }) => [heading, state, text])).toEqual([
    ["Letter, Sun 3 May 2026, Bo", "Taken back on Mon 4 May 2026: it was not sent.", "Text b."],
    ["Message, Sun 3 May 2026, Bo", "", "Text a."],
  ]);
  expect(found?.entries.map(({ press }) => press.hidden)).toEqual([
    { studentId: "s1", toldId: "b", wish: "put" },
    { studentId: "s1", toldId: "a", wish: "take" },
  ]);
});
