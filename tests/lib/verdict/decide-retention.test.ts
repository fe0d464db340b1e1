import { describe, expect, it } from "vitest";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Interval, ProvedChange } from "@/lib/domain/track-verdict";
import { decideRetention } from "@/lib/verdict/decide-retention";
import { DRILL_THRESHOLDS } from "@/lib/verdict/drill-thresholds";
import type { RetentionFilm } from "@/lib/verdict/retention-films";
import type { HistorySession } from "@/lib/verdict/session-history";
import { normal, randomFrom } from "@/seed/random";

const history = { judged: {} as JudgedTrack, fundamental: { readerSd: 1 } as Fundamental };
/** A session of four swings has a mean with an sd of 1: nothing but the day. */
const errorBudget = { day: 1, swing: 0, reader: 0, camera: 0 };
const interval = (estimate: number, sd: number): Interval => ({
  ...{ estimate, low95: estimate - 1.96 * sd, high95: estimate + 1.96 * sd },
  ...{ low80: estimate - 1.28 * sd, high80: estimate + 1.28 * sd },
});
const change = (size: number, sd = 0.3): ProvedChange =>
  ({ verdict: "gain", moved: null, before: interval(0, sd), after: interval(size, sd) }) as ProvedChange;
const film = (mean: number, kind: RetentionFilm["kind"] = "rested", days = 9, by: "said" | "logged" = "said") =>
  ({
    kind,
    days,
    by,
    entry: { swings: [{ value: mean }], captureSd: 0 } as unknown as HistorySession,
  }) as RetentionFilm;
const decide = (films: readonly RetentionFilm[], proved: ProvedChange | null = change(3)) =>
  decideRetention(history, { change: proved, errorBudget }, films);

describe("whether a proved gain stays without practice", () => {
  it("one rested film at the new level, three sds away, is held; at the old one it is lost; in between it is unclear", () => {
    const rested = { films: 1, least: 9, most: 9, by: "said" };
    expect(decide([film(3)])).toEqual({ kind: "held", ...rested });
    expect(decide([film(0)])).toEqual({ kind: "lost", ...rested });
    expect(decide([film(1.5)])).toEqual({ kind: "unclear", ...rested });
  });

  it("the bound is the likelihood of the rested films’ mean: 20 times, levels’ doubt counted in", () => {
    // Both levels with an sd of .3: variance 1.09. log 20 = (m² - (m - 3)²) / 2.18 at m = 2.588.
    expect(decide([film(2.59)])).toMatchObject({ kind: "held" });
    expect(decide([film(2.58)])).toMatchObject({ kind: "unclear" });
    expect(decide([film(0.41)])).toMatchObject({ kind: "lost" });
    expect(decide([film(0.42)])).toMatchObject({ kind: "unclear" });
  });

  it("rested films alone decide, with their least and most days of rest; one that only the log dates makes all so", () => {
    const films = [film(3, "rested", 21, "logged"), film(2.8, "rested", 8), film(-5, "soon", 1), film(-5, "same-day")];
    expect(decide(films)).toEqual({ kind: "held", films: 2, least: 8, most: 21, by: "logged" });
  });

  it("without a rested film it says what is known of practice, never held", () => {
    expect(decide([film(3, "soon", 1), film(3, "soon", 3), film(3, "unknown")])).toEqual({
      kind: "soon",
      films: 2,
      most: 3,
    });
    expect(decide([film(3, "unknown"), film(3, "same-day")])).toEqual({ kind: "unknown", films: 1 });
    expect(decide([film(3, "same-day")])).toEqual({ kind: "unfilmed" });
    expect(decide([])).toEqual({ kind: "unfilmed" });
  });

  it("is asked of gains alone: not without a change, of a slip, or of a move that is neither", () => {
    expect(decide([film(3)], null)).toBeNull();
    expect(decide([film(3)], { ...change(3), verdict: "slip" })).toBeNull();
    expect(decide([film(3)], { ...change(3), moved: "within" })).toBeNull();
  });

  it("a gain downward is held at its own new level", () => {
    expect(decide([film(-3)], change(-3))).toMatchObject({ kind: "held" });
    expect(decide([film(3)], change(-3))).toMatchObject({ kind: "lost" });
  });
});

describe("calibration: seasons whose gain is all lost without practice (seed 2002, 4000 a row)", () => {
  const RUNS = 4000;
  /** Six films before, six right after practice, up to six rested ones; the levels are the means that they have. */
  function everSaid(
    size: number,
    stays: number,
    kind: "held" | "lost",
  ): { readonly ever: number; readonly first: number } {
    const random = randomFrom(2002, 0);
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    const draw = (level: number, films: number) => Array.from({ length: films }, () => level + normal(random));
    let [ever, first] = [0, 0];
    for (let run = 0; run < RUNS; run++) {
      const [old, fresh, rested] = [draw(0, 6), draw(size, 6), draw(stays, 6)];
      const said = rested.map((_, at) => {
        const seen = rested.slice(0, at + 1);
        const proved = {
          ...change(size),
          before: interval(mean(old), 1 / Math.sqrt(6)),
          after: interval(mean([...fresh, ...seen]), 1 / Math.sqrt(6 + seen.length)),
        };
        return (
          decide(
            seen.map((value) => film(value)),
            proved,
          )?.kind === kind
        );
      });
      if (said.includes(true)) ever++;
      if (said[0]) first++;
    }
    return { ever: ever / RUNS, first: first / RUNS };
  }
  const most = 1 / DRILL_THRESHOLDS.retentionTimes.value;
  const band = 1.96 * Math.sqrt((most * (1 - most)) / RUNS);

  it.each([2, 3])("a gain of %d sds that is gone without practice is ever called held in at most 1 of 20", (size) => {
    expect(everSaid(size, 0, "held").ever).toBeLessThanOrEqual(most + band);
  });

  it("one that stays is called held by one rested film mostly at 3 sds, and hardly ever lost", () => {
    const three = everSaid(3, 3, "held");
    expect(three.first).toBeGreaterThan(0.5);
    expect(three.ever).toBeGreaterThan(0.95);
    expect(everSaid(2, 2, "held").ever).toBeGreaterThan(0.7);
    expect(everSaid(2, 2, "lost").ever).toBeLessThanOrEqual(most + band);
  });
});
