import { describe, expect, it } from "vitest";
import type { TakenPlan } from "@/lib/domain/asking";
import { planProgress } from "@/lib/verdict/plan-progress";
import type { HistorySession, TrackHistory } from "@/lib/verdict/track-history";

const plan: TakenPlan = { sessions: 2, swingsEach: 3, captureSd: 2, chance: 0.8, after: "2026-05-01" };
const session = (day: string, swings: number, captureSd = 2, apart: HistorySession["apart"] = null) =>
  ({
    session: { day },
    swings: Array.from({ length: swings }, (_, at) => ({ number: at + 1, value: 0 })),
    captureSd,
    apart,
  }) as unknown as HistorySession;
const progress = (...sessions: readonly HistorySession[]) =>
  planProgress(plan, { sessions, judged: { checkedCaptureSd: 0.86 } } as unknown as TrackHistory);
const aided = { kind: "circumstance", circumstance: "in-lesson", aid: null } as const;

describe("what has come of a plan of 2 sessions of 3 swings after 1 May", () => {
  it("sessions up to its day count nothing", () =>
    expect(progress(session("2026-05-01", 5))).toEqual({ come: 0, short: 0, state: "waiting" }));
  it("two of one day are one film; the better of them counts", () =>
    expect(progress(session("2026-05-02", 2), session("2026-05-02", 3), session("2026-05-02", 1))).toEqual({
      come: 1,
      short: 0,
      state: "waiting",
    }));
  it("fewer swings, or a camera looser by more than a quarter, are short; apart ones are nothing", () =>
    expect(
      progress(
        session("2026-05-02", 2),
        session("2026-05-03", 3, 2.6),
        session("2026-05-04", 3, 2.5),
        session("2026-05-05", 5, 2, aided),
      ),
    ).toEqual({ come: 1, short: 2, state: "waiting" }));
  it("a checked camera, .86 here, counts even where the plan asks for half of that; one looser than it doesn't", () => {
    const history = {
      sessions: [session("2026-05-03", 3, 0.86), session("2026-05-04", 3, 0.9)],
      judged: { checkedCaptureSd: 0.86 },
    } as unknown as TrackHistory;
    expect(planProgress({ ...plan, captureSd: 0.43 }, history)).toEqual({ come: 1, short: 1, state: "waiting" });
  });
  it("two days as asked: followed", () =>
    expect(progress(session("2026-05-02", 3), session("2026-05-09", 8, 0)).state).toBe("followed"));
});
