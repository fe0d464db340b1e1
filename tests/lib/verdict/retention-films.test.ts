import { describe, expect, it } from "vitest";
import type { Practice } from "@/lib/domain/practice";
import type { Session } from "@/lib/domain/session";
import { retentionFilms } from "@/lib/verdict/retention-films";
import type { ApartReason, HistorySession } from "@/lib/verdict/session-history";

const film = (day: string, said: number | null, apart: ApartReason | null = null, index: number | null = 0) =>
  ({
    ...{ session: { day, daysSincePractice: said } as Session, swings: [], captureSd: 1, captureWhy: "measured" },
    ...{ placedBy: null, takenOut: 0, index, apart, fingerprint: null },
  }) as unknown as HistorySession;
const logged = (day: string, facts: Partial<Practice> = {}): Practice =>
  ({ id: day, day, assignmentId: null, minutes: 10, balls: null, voidedAt: null, ...facts }) as Practice;
const asked = { from: "2026-09-01", loggedFrom: "2026-09-01", rest: 7 };
const told = (
  sessions: readonly HistorySession[],
  practice: readonly Practice[] = [],
  change: Partial<typeof asked> = {},
) =>
  retentionFilms({ sessions }, practice, { ...asked, ...change }).map((each) =>
    "days" in each ? `${each.kind} ${each.days} ${each.by}` : each.kind,
  );

describe("films after a drill’s start, told apart by how long practice had rested", () => {
  it.each([
    [7, "rested 7 said"],
    [6, "soon 6 said"],
    [0, "soon 0 said"],
    [null, "unknown"],
  ])("%s days since practice, as the session says: %s", (days, kind) => {
    expect(told([film("2026-09-20", days)])).toEqual([kind]);
  });

  it("where a session doesn’t say it the log does: the last day that stands, up to the film’s own", () => {
    const practice = [
      ...[logged("2026-09-12"), logged("2026-09-10"), logged("2026-09-25")],
      logged("2026-09-19", { voidedAt: "2026-09-19T20:00:00.000Z" }),
    ];
    expect(told([film("2026-09-20", null)], practice)).toEqual(["rested 8 logged"]);
    expect(told([film("2026-09-12", null)], practice)).toEqual(["soon 0 logged"]);
    expect(told([film("2026-09-20", 1)], practice)).toEqual(["soon 1 said"]);
  });

  it("practice before the log is believed to be kept says nothing of rest", () => {
    expect(told([film("2026-09-20", null)], [logged("2026-08-10")])).toEqual(["unknown"]);
    const early = { loggedFrom: "2026-08-01" };
    expect(told([film("2026-09-20", null)], [logged("2026-08-10")], early)).toEqual(["rested 41 logged"]);
  });

  it("in a lesson or right after practice it is a same-day reading, whatever else it says; it is never used", () => {
    const lesson = { kind: "circumstance", circumstance: "in-lesson", aid: null } as const;
    expect(told([film("2026-09-20", 9, lesson)], [logged("2026-09-01")])).toEqual(["same-day"]);
  });

  it("films before the first day, with an aid, set aside, off by the camera or before the track began anew are left out", () => {
    const aided = { kind: "circumstance", circumstance: "aid-in-view", aid: "stick" } as const;
    const aside = { kind: "set-aside", reason: "wind" } as const;
    const off = { kind: "camera", why: "measured", offBy: 12 } as unknown as ApartReason;
    const films = [aided, aside, off].map((apart) => film("2026-09-20", 9, apart));
    expect(told([film("2026-08-31", 9), ...films, film("2026-09-20", 9, null, null)])).toEqual([]);
  });
});
