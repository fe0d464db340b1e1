import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { dropAll, dropLog, dropPain, isPainKept, keepLog, keepPain, keptLogs } from "@/app/_ui/family/practice-store";
import { fakeStorage } from "./fake-phone";

let kept: Map<string, string>;
let isFull: boolean;

beforeEach(() => {
  kept = new Map();
  isFull = false;
  vi.stubGlobal(
    "localStorage",
    fakeStorage(kept, () => (isFull ? "full" : "taken")),
  );
});
afterEach(() => {
  for (const page of ["p1", "p2"]) dropAll(page);
  vi.unstubAllGlobals();
});

const KEYS = ["00000000-0000-4000-8000-000000000001", "00000000-0000-4000-8000-000000000002"] as const;
const log = (key: string, over: Partial<Record<"day" | "minutes" | "balls" | "felt", string>> = {}) => ({
  ...{ key, day: "2026-03-01", minutes: "10", balls: "", felt: "easy" },
  ...over,
});

describe("what a phone keeps of practice", () => {
  it("is day, minutes, balls, how it felt and that nothing hurts, under the page's id, and nothing else that is handed to it", () => {
    const more = { ...log(KEYS[0]), alias: "Dot", place: "knee", note: "her knee" };
    expect(keepLog("p1", more)).toBe("kept");
    expect(keptLogs("p1")).toEqual([{ ...log(KEYS[0]), hurts: "no" }]);
    expect([...kept]).toEqual([
      [
        `proofband-practice p1 ${KEYS[0]}`,
        JSON.stringify({ key: KEYS[0], day: "2026-03-01", minutes: "10", balls: "", felt: "easy", hurts: "no" }),
      ],
    ]);
  });

  it("is one log under one key, and each page's own; what was sent is taken out alone", () => {
    keepLog("p1", log(KEYS[0]));
    keepLog("p1", log(KEYS[0]));
    keepLog("p1", log(KEYS[1], { day: "2026-02-28" }));
    keepLog("p2", log(KEYS[0]));
    expect(keptLogs("p1").map(({ day }) => day)).toEqual(["2026-02-28", "2026-03-01"]);
    dropLog("p1", KEYS[0]);
    expect([keptLogs("p1").length, keptLogs("p2").length]).toEqual([1, 1]);
  });

  it("of pain is only that it must be asked again", () => {
    keepPain("p1");
    expect([...kept]).toEqual([["proofband-practice p1 ask", "ask"]]);
    expect([isPainKept("p1"), isPainKept("p2"), keptLogs("p1")]).toEqual(["asked-again", "no", []]);
    dropPain("p1");
    expect([isPainKept("p1"), kept.size]).toEqual(["no", 0]);
  });

  it("goes whole with a page that opens no more, and no other page's", () => {
    keepLog("p1", log(KEYS[0]));
    keepPain("p1");
    keepLog("p2", log(KEYS[1]));
    dropAll("p1");
    expect([...kept.keys()]).toEqual([`proofband-practice p2 ${KEYS[1]}`]);
  });

  it("where storing is forbidden or full is held while the page is open, and that is said", () => {
    isFull = true;
    expect(keepLog("p1", log(KEYS[0]))).toBe("in-memory");
    keepPain("p1");
    expect([keptLogs("p1").length, isPainKept("p1"), kept.size]).toEqual([1, "asked-again", 0]);
    vi.stubGlobal("localStorage", undefined);
    expect([keptLogs("p1").length, keepLog("p1", log(KEYS[1]))]).toEqual([1, "in-memory"]);
    dropLog("p1", KEYS[0]);
    dropLog("p1", KEYS[1]);
    expect(keptLogs("p1")).toEqual([]);
  });

  it("is read as nothing where something else wrote it", () => {
    const name = `proofband-practice p1 ${KEYS[0]}`;
    for (const text of [
      ...["", "null", "[]", "{", "12", JSON.stringify({ key: KEYS[0] })],
      JSON.stringify(log("short")),
      JSON.stringify(log(KEYS[0], { day: "tomorrow" })),
      JSON.stringify(log(KEYS[0], { minutes: "<img>" })),
      JSON.stringify(log(KEYS[0], { felt: "her knee hurts" })),
    ]) {
      kept.set(name, text);
      expect([text, keptLogs("p1")]).toEqual([text, []]);
    }
  });
});
