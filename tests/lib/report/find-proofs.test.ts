import { describe, expect, it } from "vitest";
import { findBrief } from "@/lib/report/find-brief";
import { findProofs } from "@/lib/report/find-proofs";
import { wordsFor } from "@/lib/words/catalogue";
import { change, OUTSIDE, plain, source, student, track } from "./brief-parts";

const words = wordsFor("en");
const listed = { listed: true } as const;
const gain = { ...listed, verdict: "gain", change: change("gain", "2026-08-03") } as const;
const slip = { ...listed, ...OUTSIDE, verdict: "slip", change: change("slip", "2026-07-06") } as const;

describe("what is newly proved, as something to do", () => {
  it("slips before gains, each with its levels and its days", () => {
    const found = findProofs(
      words,
      source([
        student("s1", "Ari", [track("s1", "hinge", gain)]),
        student("s2", "Dot", [track("s2", "foot-line", slip)]),
      ]),
    );
    expect(found.map(({ word, alias }) => `${word} ${alias}`)).toEqual(["slip Dot", "gain Ari"]);
    expect(plain(found[1]?.say() ?? "")).toMatch(/^72\.0° → 82\.0°, .*6–21 Jun.* inside its band now/);
  });

  it("a move that is neither better nor worse is neither slip nor gain, whatever its verdict says", () => {
    const next = (over: object, how: "within" | "through" | null, verdict: "gain" | "slip" | "steady" = "gain") => {
      const moved = {
        ...listed,
        verdict,
        moved: how,
        change: { ...change("gain", "2026-08-03"), verdict, moved: how },
      };
      const [found] = findProofs(words, source([student("s1", "Ari", [track("s1", "hinge", { ...moved, ...over })])]));
      const said = found?.next?.();
      expect(said?.text).toBe(found?.say());
      return [found?.word, said?.heading, plain(said?.text ?? "").replace(/^72\.0° → 82\.0°, .*?\. /, "")];
    };
    for (const verdict of ["gain", "slip"] as const)
      expect(next(OUTSIDE, "through", verdict)).toEqual([
        "moved",
        "Open Ari: Wrist hinge went past its band",
        "It went past: now outside on the other side. If a drill runs for it, look at that drill first.",
      ]);
    expect(next({ position: "edge" }, "through")[2]).toMatch(/on the other edge of its band/);
    expect(next({}, "within").slice(0, 2)).toEqual(["moved", "Open Ari: Wrist hinge moved, still inside"]);
    expect(next(OUTSIDE, null, "steady")).toEqual([
      "moved",
      "Open Ari: Wrist hinge moved, no nearer to its band",
      "It is neither nearer to its band nor farther from it.",
    ]);
    expect(words.has("brief.about.moved")).toBe(true);
  });

  it("comes after what is better or worse", () => {
    const moved = { ...gain, moved: "within", change: { ...gain.change, moved: "within" } } as const;
    const given = [moved, gain, slip].map((each, at) => student(`s${at}`, "Ari", [track(`s${at}`, "hinge", each)]));
    expect(findProofs(words, source(given)).map(({ word }) => word)).toEqual(["slip", "gain", "moved"]);
    expect(findBrief(words, source(given)).map(({ word }) => word)).toContain("moved");
  });

  it("names nothing that isn't on the list, even where a loader hands it over", () => {
    const alone = track("s1", "hinge", { ...gain, listed: false });
    const given = source([student("s1", "Ari", [alone])]);
    const [proof] = source([student("s1", "Ari", [track("s1", "hinge", gain)])]).proofs;
    if (proof === undefined) throw new Error("no proof");
    expect(findProofs(words, given)).toEqual([]);
    expect(findProofs(words, { ...given, proofs: [{ ...proof, summary: alone }] })).toEqual([]);
  });
});
