import { expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Waiting } from "@/lib/domain/waiting";
import { buildWaiting } from "@/lib/report/build-waiting";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const measured = BUILT_IN.filter(({ id }) => ["hinge", "hip-sway", "foot-line"].includes(id));
const wait = (
  fundamentalId: string,
  fromDay: string,
  untilDay: string | null,
  voidedAt: string | null = null,
): Waiting => ({
  ...{ id: fromDay, fundamentalId, fromDay, untilDay, who: "Bo", recordedAt: fromDay, voidedAt },
});
const part = (waits: readonly Waiting[], drilled: readonly string[] = [], whyNot: string | null = null) =>
  buildWaiting(words, { studentId: "s", measured, drilled: new Set(drilled), waits, whyNot });

it("offers what is measured and has no drill, and says what waits since when and what did", () => {
  const shown = part([wait("hinge", "2026-08-01", null), wait("hip-sway", "2026-05-01", "2026-06-01")], ["foot-line"]);
  expect(shown?.heading).toBe("One thing waits on purpose");
  expect(shown?.table?.rows.map(({ cells }) => cells)).toEqual([
    ["Wrist hinge", expect.stringMatching(/^on purpose since .*1 Aug 2026, Bo$/)],
    ["Hip sway, top", expect.stringMatching(/^on purpose 1 May.*1 Jun.*, now not$/)],
  ]);
  expect(shown?.press?.buttons.map((each) => [each?.label, each?.hidden.wish, each?.hidden.fundamentalId])).toEqual([
    ["End the wait of Wrist hinge", "end", "hinge"],
    ["Leave Hip sway, top alone on purpose", "begin", "hip-sway"],
  ]);
});

it("knows nothing of what was taken back, and isn't there where everything has a drill or nothing is measured", () => {
  const [row] = part([wait("hinge", "2026-08-01", null, "2026-08-01")])?.table?.rows ?? [];
  expect(row?.cells[1]).toBe("no drill is given, and it isn’t marked");
  expect(part([], ["hinge", "hip-sway", "foot-line"])).toBeNull();
  expect(buildWaiting(words, { studentId: "s", measured: [], drilled: new Set(), waits: [], whyNot: null })).toBeNull();
});

it("where nothing may be recorded it says why and offers the end of a wait alone", () => {
  const shown = part([wait("hinge", "2026-08-01", null)], ["foot-line"], "Consent has ended.");
  expect(shown?.paragraphs.at(-1)).toBe("Consent has ended.");
  expect(shown?.press?.buttons.map((each) => each?.hidden.wish ?? null)).toEqual(["end", null]);
});
