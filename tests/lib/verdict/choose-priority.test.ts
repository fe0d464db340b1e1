import { describe, expect, it } from "vitest";
import { choosePriority } from "@/lib/verdict/choose-priority";
import { MADE, madeWork } from "./made-work";
import { PAUSE, PRIORITY_TABLE as TABLE } from "./priority-table";

const freely = { stop: null, chosenId: null };

const say = (items: readonly { readonly fundamental: { readonly id: string } }[]): string =>
  items.map(({ fundamental }) => fundamental.id).join(" ");

describe(`the order of work, ${TABLE.length} rows`, () => {
  for (const [letter, says, known, hand, more = {}] of TABLE)
    it(`(${letter}) ${says}`, () => {
      const { inHand } = choosePriority(madeWork(known), { stop: more.stop ?? null, chosenId: more.chosen ?? null });
      expect(inHand === null ? "" : `${say([inHand.item])} ${inHand.reason}`).toBe(hand);
      if (inHand === null) return;
      expect(say(inHand.blocks)).toBe(more.blocks ?? "");
      if (more.next !== undefined) expect(inHand.next && say([inHand.next])).toBe(more.next);
    });

  it("has forty rows or more, of every letter", () => {
    expect(TABLE.length).toBeGreaterThanOrEqual(40);
    expect([...new Set(TABLE.map(([letter]) => letter))]).toEqual(["a", "b", "c", "d", "e", "f", "back", "coach"]);
  });

  it("(a) says of a stop since when, and what the order of work says for afterwards", () => {
    const { stop, inHand, rule } = choosePriority(madeWork({ hinge: "outside" }), { ...freely, stop: PAUSE });
    expect([stop, inHand, rule?.item.fundamental.id]).toEqual([PAUSE, null, "hinge"]);
  });

  it("(e) keeps two at most: what is off its level, then owned, then read longest ago", () => {
    const items = madeWork({ "trail-v": "outside", hinge: "owned", "shaft-line": "owned" }).map((item) => ({
      ...item,
      lastDay: item.fundamental.id === "hip-sway" ? "2031-01-01" : item.lastDay,
    }));
    expect(say(choosePriority(items, freely).keeps)).toBe("hinge shaft-line");
    const watch = { ...MADE.owned, watch: { since: "2031-05-01" } as never };
    const watched = items.map((item) => (item.fundamental.id === "shaft-line" ? { ...item, verdict: watch } : item));
    expect(say(choosePriority(watched, freely).keeps)).toBe("shaft-line hinge");
    expect(
      say(
        choosePriority(
          items.filter((item) => !item.verdict?.ownedSince),
          freely,
        ).keeps,
      ),
    ).toBe("hip-sway lead-v");
  });

  it("(e) never keeps what is in hand", () => {
    const { inHand, keeps } = choosePriority(madeWork({}), { ...freely, chosenId: "trail-v" });
    expect([inHand?.item.fundamental.id, say(keeps)]).toEqual(["trail-v", "lead-v foot-line"]);
  });

  it("(f) names what was asked for twice as unknown", () => {
    const { unknown } = choosePriority(
      madeWork({ "lead-v": "unmeasured*", hinge: "edge*", "hip-sway": "edge" }),
      freely,
    );
    expect(say(unknown)).toBe("lead-v hinge");
  });

  it("says what would alter it: its own side of the band, doubts upstream, a keep that slips, pain", () => {
    const { inHand } = choosePriority(madeWork({ "trail-v": "edge", hinge: "outside", "foot-line": "owned" }), freely);
    expect(
      inHand?.alters.map((each) => [
        each.kind,
        "items" in each ? say(each.items) : "item" in each ? say([each.item]) : "",
      ]),
    ).toEqual([
      ["comes-inside", "hinge"],
      ["turns-out-outside", "trail-v"],
      ["keep-slips", "foot-line lead-v"],
      ["pain", ""],
    ]);
  });

  it.each(["outside", "edge", "slipped", "no-goal", "unmeasured", "inside"] as const)(
    "what the coach chose stays until a coach chooses anew, or for pain, whatever the films show: %s",
    (standing) => {
      const known = madeWork({ "trail-v": "edge", "foot-line": "owned", hinge: standing });
      const { inHand } = choosePriority(known, { ...freely, chosenId: "hinge" });
      expect(inHand?.alters).toEqual([{ kind: "chosen-anew" }, { kind: "pain" }]);
    },
  );

  it("says what the order of work would have said beside what the coach chose", () => {
    const known = madeWork({ "foot-line": "outside", hinge: "outside" });
    const { inHand, rule } = choosePriority(known, { ...freely, chosenId: "hinge" });
    expect([inHand?.reason, rule?.item.fundamental.id, rule?.reason]).toEqual(["chosen", "foot-line", "outside"]);
  });

  it("asks nothing of the order in which the fundamentals are given", () => {
    const known = madeWork({ "foot-line": "outside", hinge: "slipped", "lead-v": "unmeasured" });
    expect(choosePriority([...known].reverse(), freely)).toEqual(choosePriority(known, freely));
  });
});
