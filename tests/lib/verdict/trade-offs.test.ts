import { describe, expect, it } from "vitest";
import { type DatedChange, tradeOffs } from "@/lib/verdict/trade-offs";

function change(id: string, way: "up" | "down", from: string, to: string): DatedChange {
  const of = id === "contact" ? ({ kind: "contact" } as const) : ({ kind: "fundamental", id } as const);
  return { of, way, from: `2031-${from}`, to: `2031-${to}` };
}

const say = (changes: readonly DatedChange[]): string[] =>
  tradeOffs(changes).map(({ up, down }) =>
    [up, down].map(({ of }) => (of.kind === "contact" ? "contact" : of.id)).join(" < "),
  );

describe("one up and one down over the same days", () => {
  const sway = change("hip-sway", "up", "05-01", "05-20");

  it("story 25: sway better, tilt kept and contact worse in the days of one drill", () => {
    const found = say([
      sway,
      change("tilt-kept", "down", "05-10", "06-01"),
      change("contact", "down", "05-15", "05-30"),
    ]);
    expect(found).toEqual(["hip-sway < tilt-kept", "hip-sway < contact"]);
  });

  it("days that only touch are the same day; a day later they are not", () => {
    expect(say([sway, change("tilt-kept", "down", "05-20", "06-01")])).toEqual(["hip-sway < tilt-kept"]);
    expect(say([sway, change("tilt-kept", "down", "05-21", "06-01")])).toEqual([]);
    expect(say([sway, change("tilt-kept", "down", "04-01", "05-01")])).toEqual(["hip-sway < tilt-kept"]);
  });

  it("two of one kind are none", () => {
    expect(say([sway, change("hinge", "up", "05-01", "05-20")])).toEqual([]);
    expect(say([change("hinge", "down", "05-01", "05-20"), change("contact", "down", "05-01", "05-20")])).toEqual([]);
    expect(say([])).toEqual([]);
  });

  it("contact up while a fundamental slips is one, too", () => {
    expect(say([change("contact", "up", "05-01", "05-20"), change("hinge", "down", "05-03", "05-05")])).toEqual([
      "contact < hinge",
    ]);
  });

  it("every pair is said, by the day on which the later one began", () => {
    const late = change("foot-line", "up", "05-25", "06-10");
    const down = change("tilt-kept", "down", "05-05", "06-01");
    expect(say([late, sway, down])).toEqual(["hip-sway < tilt-kept", "foot-line < tilt-kept"]);
  });
});
