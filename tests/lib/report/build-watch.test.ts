import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { OwnedWatch, TrackVerdict } from "@/lib/domain/track-verdict";
import { buildWatch } from "@/lib/report/build-watch";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const tilt = BUILT_IN.find((each) => each.id === "tilt-kept");
if (tilt === undefined) throw new Error("no such fundamental");

const WATCH: OwnedWatch = {
  since: "2026-07-05",
  sessions: 2,
  raisedOn: "2026-07-13",
  direction: "down",
  size: { estimate: -4.9, low80: -6.4, high80: -3.4, low95: -7.2, high95: -2.7 },
  logBayesFactor: Math.log(240),
};

const verdictWith = (over: Partial<TrackVerdict>): TrackVerdict =>
  ({ verdict: "open", ownedSince: "2026-03-22", watch: WATCH, ...over }) as TrackVerdict;

/** Spaces that don't break are spaces here. */
const plain = (text: string | undefined): string | undefined => text?.replace(/[\u00a0\u202f]/g, " ");

function said(over: Partial<TrackVerdict>, today: string) {
  const history = {
    fundamental: tilt,
    sessions: [
      { session: { day: "2026-07-13" }, apart: null },
      { session: { day: "2026-08-30" }, apart: { kind: "set-aside", reason: "dark" } },
    ],
  } as unknown as Parameters<typeof buildWatch>[1]["history"];
  return buildWatch(words, { history, verdict: verdictWith(over), today });
}

describe("the alarm on a page", () => {
  it("two films below its level, by how much with its doubt, and that it is no proof", () => {
    const alarm = said({}, "2026-07-20");
    expect(alarm?.short).toBe("Look again: two films below its level since 5 Jul");
    expect(plain(alarm?.sentence)).toBe(
      "Look again: two films below its level since 5 Jul, by 4.9 ± 2.3°. An early sign, no proof; the next film on another day tells more.",
    );
    expect(alarm?.detail[0]).toBe("These films fit a lower level 240 times better than the level it had.");
  });

  it("above, one film, and beyond what can be told apart", () => {
    const size = { estimate: 9, low80: 7, high80: 11, low95: 6, high95: 12 };
    const alarm = said({ watch: { ...WATCH, sessions: 1, direction: "up", size, logBayesFactor: 9 } }, "2026-07-20");
    expect(plain(alarm?.sentence)).toContain("one film above its level since 5 Jul, by 9 ± 3°");
    expect(alarm?.detail[0]).toBe("These films fit a higher level more than 1000 times better than the level it had.");
  });

  it("six weeks after the last film that counts it is of its day: 24 Aug is the 42nd day, 25 Aug the 43rd", () => {
    expect(said({}, "2026-08-24")?.sentence).toMatch(/^Look again/);
    const alarm = said({}, "2026-08-25");
    expect(plain(alarm?.sentence)).toBe(
      "On Mon 13 Jul 2026 it had two films below its level, by 4.9 ± 2.3°: an early sign, no proof. No film since, so it is to be checked.",
    );
    expect(alarm?.short).not.toMatch(/look again/i);
  });

  it("never the word slip, in no tense", () => {
    for (const today of ["2026-07-20", "2026-12-01"]) expect(JSON.stringify(said({}, today))).not.toMatch(/slip/i);
  });

  it("none without an alarm, nor where a slip is said already; an unlisted one keeps it", () => {
    expect(said({ watch: null }, "2026-07-20")).toBeNull();
    expect(said({ verdict: "slip", listed: true }, "2026-07-20")).toBeNull();
    expect(said({ verdict: "slip", listed: false }, "2026-07-20")).not.toBeNull();
  });
});
