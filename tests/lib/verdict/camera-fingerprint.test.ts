import { describe, expect, it } from "vitest";
import { cameraFingerprints } from "@/lib/verdict/camera-fingerprint";
import { type Departure, departures, type FilmedSession } from "@/lib/verdict/fingerprint-residuals";
import { FINGERPRINT } from "@/lib/verdict/fingerprint-thresholds";
import { randomFrom } from "@/seed/random";
import { builtIn, FACE_ON, filmedSeason } from "./filmed-season";
import { plainFilm as plain } from "./plain-film";

const usual = [plain("a"), plain("b"), plain("c")];
const kinds = (sessions: readonly FilmedSession[]) =>
  cameraFingerprints("face-on", sessions).map((found) => found?.kind ?? null);

/** By yaw of 8 degrees: 0.7 x 8 = 5.6 on tilts and hinge; the sway hardly moves. */
const YAW_8 = { "setup-tilt": 5.6, "top-tilt": 5.6, "impact-tilt": 5.6, hinge: 5.6 } as const;

describe("one session, held against a sum over a fine grid of yaws, rolls, and changed or not", () => {
  const normal = (x: number, variance: number): number =>
    Math.exp((-x * x) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);

  /** P(the phone stood off by more than 3 degrees) without any normal algebra: every sum is written out. */
  function byGrid(items: readonly Departure[]): { readonly above: number; readonly mean: number } {
    const { movedShare, carriedShare, movedSd, movedRollSd, carriedChangeSd, carriedSd } = FINGERPRINT;
    const roll = 0.5 ** 2 * (1 + 1 / 3) + carriedSd ** 2 * (1 + 1 / 3);
    const beliefs = [
      { own: 1, roll, weight: (1 - movedShare) * (1 - carriedShare) },
      { own: movedSd ** 2, roll: roll + movedRollSd ** 2, weight: movedShare },
      { own: 1, roll: roll + carriedChangeSd ** 2, weight: (1 - movedShare) * carriedShare },
    ];
    let [total, above, mean] = [0, 0, 0];
    for (const { own, roll: rollVariance, weight } of beliefs) {
      const [widest, steepest] = [6 * Math.sqrt(own), 6 * Math.sqrt(rollVariance)];
      for (let psi = -widest; psi <= widest; psi += widest / 40)
        for (let before = -2.4; before <= 2.4; before += 0.48)
          for (let rho = -steepest; rho <= steepest; rho += steepest / 9) {
            const left = items.map((item) => ({
              ...item,
              rest: item.residual - item.loadings[0] * (psi - before) - item.loadings[1] * rho,
            }));
            // Most days few change, on busy ones many; with five fundamentals a set of five is left out.
            const of = (share: number): number => {
              const each = left.map(({ rest, variance, changeVariance }) => [
                (1 - share) * normal(rest, variance),
                share * normal(rest, variance + changeVariance),
              ]) as [number, number][];
              const product = (which: (pair: [number, number]) => number): number =>
                each.reduce((sum, pair) => sum * which(pair), 1);
              return product(([still, changed]) => still + changed) - product(([, changed]) => changed);
            };
            const { busyDays, busyShare, changeShare } = FINGERPRINT;
            const density =
              weight *
              normal(psi, own) *
              normal(before, 1 / 3) *
              normal(rho, rollVariance) *
              ((1 - busyDays) * of(changeShare) + busyDays * of(busyShare)) *
              widest *
              steepest;
            total += density;
            mean += density * psi;
            if (psi > 3) above += density;
          }
    }
    return { above: above / total, mean: mean / total };
  }

  it("yaw of 8: probability within .01 and degrees within .1 of the grid's", () => {
    const session = plain("d", YAW_8);
    const found = cameraFingerprints("face-on", [...usual, session])[3];
    const grid = byGrid(departures([session], usual));
    expect(found?.kind).toBe("camera");
    expect(Math.abs((found?.probability ?? 0) - grid.above)).toBeLessThan(0.01);
    expect(Math.abs((found?.offBy ?? 0) - grid.mean)).toBeLessThan(0.1);
    expect(found?.jumped.map(({ fundamental }) => fundamental.id)).toEqual([
      "setup-tilt",
      "top-tilt",
      "impact-tilt",
      "hinge",
    ]);
  });
});

describe("what is named and what isn't", () => {
  it("the same jump without its proportions, or of one alone, is the student", () => {
    expect(kinds([...usual, plain("d", { hinge: 9 })])[3]).toBeNull();
    expect(kinds([...usual, plain("d", { ...YAW_8, hinge: -5.6 })])[3]).not.toBe("camera");
    expect(kinds([...usual, plain("d", { "hip-sway": 8, "impact-tilt": -6 })])[3]).toBeNull();
  });

  it("leans alone with the hinge put: a crooked phone or the student, said so and not named", () => {
    const leans = { "setup-tilt": 10, "top-tilt": 10, "impact-tilt": 10 } as const;
    expect(kinds([...usual, plain("d", leans)])[3]).toBe("not-told-apart");
  });

  it("leans alone without any second witness are never named, however large", () => {
    const only = (session: FilmedSession): FilmedSession => ({
      ...session,
      fundamentals: session.fundamentals.filter(({ fundamental }) => fundamental.id.endsWith("tilt")),
    });
    for (const size of [4, 8, 16]) {
      const leans = { "setup-tilt": size, "top-tilt": size, "impact-tilt": size } as const;
      expect(kinds([...usual, plain("d", leans)].map(only))[3]).not.toBe("camera");
    }
  });

  it("nothing is asked of fewer than three fundamentals, or before three sessions", () => {
    const two = (session: FilmedSession): FilmedSession => ({
      ...session,
      fundamentals: session.fundamentals.filter(({ fundamental }) => ["setup-tilt", "hinge"].includes(fundamental.id)),
    });
    expect(kinds([...usual, plain("d", YAW_8)].map(two))).toEqual([null, null, null, null]);
    expect(kinds([plain("a"), plain("b"), plain("d", YAW_8)])).toEqual([null, null, null]);
  });

  it("named sessions don't become the usual level: off from the fourth to the twelfth, named at each, one run", () => {
    const later = Array.from({ length: 9 }, (_, at) => plain(`off${at}`, YAW_8));
    const found = cameraFingerprints("face-on", [...usual, ...later]).slice(3);
    expect(found.map((each) => each?.kind)).toEqual(later.map(() => "camera"));
    expect(new Set(found.map((each) => each?.run))).toEqual(new Set(["off0"]));
  });

  it("down the line the club turns the other way: feet +5 and shaft -5 are the phone, +5 and +5 are not", () => {
    const behind = (id: string, feet: number, shoulders: number, shaft: number): FilmedSession => ({
      ...plain(id),
      shiftSd: 0.6,
      fundamentals: (
        [
          ["foot-line", feet],
          ["shoulder-line", shoulders],
          ["shaft-line", shaft],
          ["posture-bend", 35],
        ] as const
      ).map(([key, value]) => ({
        fundamental: builtIn(key),
        swings: [value, value, value],
        captureSd: 0.6,
        reader: "Wren",
        era: "now",
      })),
    });
    const before = ["a", "b", "c", "d", "e"].map((id) => behind(id, 1, 0, 0));
    const last = (feet: number, shoulders: number, shaft: number) =>
      cameraFingerprints("down-the-line", [...before, behind("f", feet, shoulders, shaft)]).at(-1);
    expect(last(8, 7, -7)?.kind).toBe("camera");
    expect(Math.abs((last(8, 7, -7)?.offBy ?? 0) - 6.5)).toBeLessThan(1.5);
    expect(last(8, 7, 7)?.kind).not.toBe("camera");
  });
});

describe("invariance", () => {
  const seasons = Array.from(
    { length: 12 },
    (_, seed) =>
      filmedSeason(
        {
          sessions: 12,
          fundamentals: FACE_ON,
          yaw: (at) => (at >= 7 ? 8 : 0),
          moved: () => 0,
          unknown: 0.3,
          label: (at) => (seed % 2 === 0 && at >= 7 ? "bench" : null),
        },
        randomFrom(seed, 21),
      ).sessions,
  );
  const said = (sessions: readonly FilmedSession[]) =>
    cameraFingerprints("face-on", sessions).map(
      (found) => found && { kind: found.kind, offBy: found.offBy.toFixed(6), run: found.run },
    );

  it("a prefix of the season says the same of its sessions", () => {
    for (const sessions of seasons) {
      const whole = said(sessions);
      for (let end = 1; end < sessions.length; end++) expect(said(sessions.slice(0, end))).toEqual(whole.slice(0, end));
    }
  });

  it("the order of the fundamentals changes nothing", () => {
    for (const sessions of seasons) {
      const turned = sessions.map((each) => ({ ...each, fundamentals: [...each.fundamentals].reverse() }));
      expect(said(turned)).toEqual(said(sessions));
    }
  });

  it("a hinge in tenths of a degree says the same", () => {
    const tenths = (sessions: readonly FilmedSession[]): readonly FilmedSession[] =>
      sessions.map((session) => ({
        ...session,
        fundamentals: session.fundamentals.map((each) => {
          if (each.fundamental.id !== "hinge") return each;
          const { sensitivity, readerSd } = each.fundamental;
          return {
            ...each,
            swings: each.swings.map((value) => 10 * value),
            captureSd: 10 * each.captureSd,
            fundamental: {
              ...each.fundamental,
              readerSd: 10 * readerSd,
              sensitivity: { ...sensitivity, yaw: 10 * sensitivity.yaw },
            },
          };
        }),
      }));
    for (const sessions of seasons) expect(said(tenths(sessions))).toEqual(said(sessions));
  });
});
