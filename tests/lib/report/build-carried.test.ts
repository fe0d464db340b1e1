import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { buildCarried, type CarriedSource, sayLook } from "@/lib/report/build-carried";
import { wordsFor } from "@/lib/words/catalogue";
import { SAID } from "../ingest/carried-archive";

const words = wordsFor("en");
const of = (id: string) => {
  const found = BUILT_IN.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
};
const look = (date: string, more: Partial<CarriedSource> = {}): CarriedSource => ({
  ...{ fundamental: of("hinge"), saidBy: "Far Range", look: { ...SAID, date } },
  ...more,
});
const wish = { importedOn: "2026-06-01", reader: { name: "Cy", since: "2026-06-09" } } as const;

describe("buildCarried", () => {
  it("is nothing where nothing came, or only later looks", () => {
    expect(buildCarried(words, { ...wish, looks: [], of: "season" })).toBeNull();
    expect(buildCarried(words, { ...wish, looks: [look("2026-05-04")], of: "season", until: "2026-05-03" })).toBeNull();
  });

  it("says by whom, when it came and who reads since; names of a file stand as text", () => {
    const part = buildCarried(words, {
      ...wish,
      looks: [look("2026-05-04", { saidBy: "<b>Range</b>" })],
      of: "season",
    });
    expect(part?.heading).toBe("Said by <b>Range</b>, as its file has it");
    expect(part?.paragraphs.join(" ")).toMatch(/on 1 Jun 2026.*Since 9 Jun 2026 Cy reads the films/);
    const nameless = buildCarried(words, { ...wish, looks: [look("2026-05-04", { saidBy: "" })], of: "season" });
    expect(nameless?.heading).toBe("Said by another academy, as its file has it");
  });

  it("shows of a season the latest look of each fundamental, of a fundamental every look by day", () => {
    const looks = [look("2026-05-01"), look("2026-05-02", { fundamental: of("head-drift") }), look("2026-05-04")];
    const days = (part: ReturnType<typeof buildCarried>) =>
      part?.table.rows.map(({ cells }) => cells.find((cell) => cell.includes("May")));
    expect(days(buildCarried(words, { ...wish, looks, of: "season" }))).toEqual(["2 May 2026", "4 May 2026"]);
    expect(days(buildCarried(words, { ...wish, looks, of: "fundamental" }))).toHaveLength(3);
  });
});

describe("sayLook", () => {
  const hinge = of("hinge");

  it("says gain and slip only of what stood on that academy's list then", () => {
    const bare = { ...SAID, whole: null };
    expect(sayLook(words, hinge, bare).said).toBe("Real gain");
    expect(sayLook(words, hinge, { ...bare, listed: false }).said).toBe("Not settled");
    expect(sayLook(words, hinge, { ...SAID, listed: false }).said).toMatch(/^Not settled/);
    expect(sayLook(words, hinge, { ...bare, verdict: "steady", listed: false }).said).toBe("Holding");
  });

  it("says level, how sure, sessions and the change of a whole snapshot", () => {
    const { said, whole, fits } = sayLook(words, hinge, SAID);
    expect(said).toMatch(/^Real gain; level 82\.0\s±\s2\.0°; chance that it is nothing: 1 in 50/);
    expect(said).toContain("12 sessions");
    expect(whole).toMatch(/76.*82/);
    expect(fits).toMatch(/33 times better/);
  });
});
