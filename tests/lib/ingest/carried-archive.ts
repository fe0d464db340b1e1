import type { Archive } from "@/lib/domain/archive";
import type { SaidLook } from "@/lib/domain/carried-look";

export const SESSION_DAY = "2026-05-04";

const interval = (estimate: number) => ({
  ...{ estimate, low80: estimate - 1, high80: estimate + 1, low95: estimate - 2, high95: estimate + 2 },
});

/** A look with everything that one may hold. */
export const SAID: SaidLook = {
  ...{ date: SESSION_DAY, verdict: "gain", listed: true, logBayesFactor: 3.5, directionUp: 0.99 },
  whole: {
    ...{ sessions: 12, noChange: 0.02, moved: null, level: interval(82), position: "inside" },
    change: {
      ...{ verdict: "gain", shape: "step", from: "2026-03-01", to: "2026-03-20" },
      ...{ size: interval(6), before: interval(76), after: interval(82), moved: null, provedOn: "2026-04-20" },
    },
    ...{ changeBelow: null, ownedSince: "2026-05-01" },
  },
};

/** An archive of one student with one session of one swing; with looks of a third academy, or a snapshot of its own. */
export function oneStudent(has: { readonly carried?: readonly string[]; readonly snapshot?: string }): Archive {
  const createdAt = "2026-05-04T18:00:00.000Z";
  const track = { fundamentalId: "hinge", clubGroup: "iron" } as const;
  const nothing = {
    club: null,
    aid: null,
    stanceWidthCm: null,
    daysSincePractice: null,
    note: null,
    solid: null,
  } as const;
  return {
    ...({ format: "proofband-archive", version: 1, holds: "student", saidBy: "Far Range" } as const),
    rules: {
      ...{ zone: "UTC", locale: "en", seasonStart: "0001-01-01", ownFundamentals: [], clubGroups: [], drills: [] },
      ...{ goalBands: [], readerErrors: [], noteCodings: [], owningRules: [] },
      noiseModels: [],
    },
    students: [
      {
        ...({
          id: "s-far",
          alias: "Jun",
          birthYear: 2012,
          hand: "right",
          zone: "UTC",
          clubs: "",
          language: "de",
          createdAt,
        } as const),
        ...{ departedOn: null, heights: [], consents: [], events: [], assignments: [], practice: [], askings: [] },
        ...{ priorities: [], filmPlans: [], readBacks: [] },
        sessions: [
          {
            ...({ id: "film-far", day: SESSION_DAY, sequence: 1, clubGroup: "iron", saidClubGroup: "iron" } as const),
            ...({ reader: "Coach Far", circumstance: "unaided", marks: "", ...nothing, balls: null } as const),
            ...{ setAsideReason: null, createdAt, groupId: null, captures: [], statedCaptureSds: [] },
            swings: [{ number: 1, note: null, readings: [] }],
            looks: has.snapshot === undefined ? [] : [{ ...track, noiseModelName: "hinge/iron#1" }],
          },
        ],
        snapshots:
          has.snapshot === undefined
            ? []
            : [
                {
                  ...{ ...track, asOf: SESSION_DAY, policyVersion: "7", noiseModel: "hinge/iron#1", listed: false },
                  ...{ listedLooks: [false], body: has.snapshot },
                },
              ],
        carried: (has.carried ?? []).map((body) => ({
          ...{ ...track, sessionId: "film-far", saidBy: "Third Range", policyVersion: "6", noiseModelName: "n", body },
        })),
      },
    ],
    rereads: [],
  };
}
