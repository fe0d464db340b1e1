import { beforeAll, describe, expect, it } from "vitest";
import { listingOf, withListing } from "@/app/_server/roster/listing";
import { newProofs } from "@/app/_server/roster/new-proofs";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { BriefFinding } from "@/lib/report/brief-finding";
import type { BriefSource, BriefStudent } from "@/lib/report/brief-source";
import { findBrief } from "@/lib/report/find-brief";
import { provedAlone } from "@/lib/report/said";
import type { TrackSummary } from "@/lib/report/track-summary";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { type Judgement, judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { rosterList } from "@/lib/verdict/roster-list";
import { flat, step } from "@/seed/level-path";
import { learnAcademy, type SimulatedTrack, simulateTrack } from "./population";
import { WITHOUT_PLANS } from "./season-score";

/*
 * Of a simulated academy the brief is read at three dates of one season: whatever it calls changed stands on the roster's list
 * of that day, and of what it calls changed over the season at most one in twenty is false.
 */

const SEED = 20261127;
const STUDENTS = 36;
const MEASURED = ["setup-tilt", "hinge", "hip-sway"] as const;
const SESSIONS = 14;
const WEEKS = [22, 34, 46];
const FIRST_DAY = 20_000;

interface Simulated {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly simulated: SimulatedTrack;
}

/** Every third track changes by two and a half sds of a session mean. */
function academy(): readonly Simulated[] {
  return Array.from({ length: STUDENTS * MEASURED.length }, (_, number) => {
    const changes = number % 3 === 0;
    const scenario = {
      name: "brief",
      sessions: SESSIONS,
      path: (at: number) => (changes ? step(0, number % 2 === 0 ? 2.5 : -2.5, at) : flat(0)),
      change: changes ? ([4, 7] as const) : null,
    };
    return {
      studentId: `s${Math.floor(number / MEASURED.length)}`,
      fundamentalId: MEASURED[number % MEASURED.length] ?? "",
      simulated: simulateTrack(scenario, SEED, number),
    };
  });
}

interface Day {
  readonly today: string;
  readonly judged: readonly (Simulated & { readonly judgement: Judgement })[];
  readonly summaries: readonly TrackSummary[];
  readonly findings: readonly BriefFinding[];
}

function summaryOf(
  { studentId, fundamentalId, simulated }: Simulated,
  { verdict }: Judgement,
  today: string,
): TrackSummary {
  const films = simulated.track.sessions.filter(({ date }) => date <= today);
  return {
    ...{ studentId, fundamentalId, clubGroup: "iron", verdict },
    goal: { low: simulated.track.goal?.low ?? null, high: simulated.track.goal?.high ?? null },
    sessions: films.map(({ date, swings }) => ({
      date,
      mean: swings.reduce((sum, value) => sum + value, 0) / swings.length,
      mark: "used",
    })),
  };
}

function readOn(week: number, tracks: readonly Simulated[], noise: NoiseModel): Day {
  const today = dayFromNumber(FIRST_DAY + week * 7);
  const judged = tracks.map((each) => {
    const { track } = each.simulated;
    const known = { ...track, sessions: track.sessions.filter(({ date }) => date <= today) };
    return { ...each, judgement: judgeTrack(known, noiseAlways(noise), WITHOUT_PLANS, "looks") };
  });
  const bare = judged.map((each) => summaryOf(each, each.judgement, today));
  const listing = listingOf(
    judged.map(({ judgement: { listedLooks } }, at) => ({ ...(bare[at] as TrackSummary), listedLooks })),
  );
  const all = bare.map((summary) => ({ ...summary, verdict: withListing(summary.verdict, listing) }));
  const students = Array.from({ length: STUDENTS }, (_, at): BriefStudent => {
    const summaries = all.filter(({ studentId }) => studentId === `s${at}`);
    const days = summaries.flatMap(({ sessions }) => sessions.map(({ date }) => date)).sort();
    const student = {
      id: `s${at}`,
      alias: `Tia${at}.`,
      birthYear: null,
      hand: "right",
      zone: "UTC",
      clubs: "",
    } as const;
    return {
      student,
      since: today,
      filmDays: [...new Set(days)],
      sessions: days.length,
      lastDay: days.at(-1) ?? null,
      summaries,
      askings: [],
    };
  });
  const here = { entries: students, fundamentals: BUILT_IN, all };
  const source: BriefSource = {
    ...{
      today,
      fundamentals: BUILT_IN,
      students,
      all,
      watched: [],
      drills: [],
      pauses: [],
      pains: [],
      due: [],
      weeks: 6,
    },
    proofs: newProofs(here, new Set()),
  };
  return { today, judged, summaries: all, findings: findBrief(words, source) };
}

/** What of a finding rests on a proof is said by its key: the brief's own words are tested elsewhere. */
const words = { locale: "en", say: (key: string, args?: object) => `${key} ${JSON.stringify(args)}`, has: () => true };

/** What was proved, better, worse or neither. */
const isProof = ({ word }: BriefFinding): boolean => word === "slip" || word === "gain" || word === "moved";

const named = ({ findings }: Day) => findings.filter(isProof);

describe("the brief over a simulated season", () => {
  let days: readonly Day[];
  beforeAll(() => {
    const tracks = academy();
    const noise = learnAcademy(40, SEED);
    days = WEEKS.map((week) => readOn(week, tracks, noise));
  }, 180_000);

  it("names as changed exactly the tracks that the roster's list holds on that day", () => {
    for (const { judged, findings } of days) {
      const { latest } = rosterList(
        judged.map(({ judgement }) => judgement.listedLooks),
        POLICY.listShare,
        POLICY,
      );
      const listed = judged.filter(({ judgement }, at) => latest[at] === true && judgement.verdict.change !== null);
      const ids = findings.filter(isProof).map(({ key }) => key.split(" ")[1]);
      expect(ids.sort()).toEqual(listed.map(({ judgement }) => judgement.verdict.id).sort());
    }
    expect(days.map((day) => named(day).length).some((count) => count > 5)).toBe(true);
  });

  it("says of a track that is proved for itself alone neither gain nor slip, nor that somebody is ready by it", () => {
    let alone = 0;
    for (const { summaries, findings } of days)
      for (const summary of summaries.filter(({ verdict }) => provedAlone(verdict) === "alone")) {
        alone += 1;
        const own = findings.filter(({ key }) => key.split(" ")[1] === summary.verdict.id);
        expect(own.filter((finding) => isProof(finding) || finding.word === "ready")).toEqual([]);
        const proved = summary.verdict.change?.provedOn ?? "";
        const stalled = findings.filter(({ word, studentId }) => word === "stalled" && studentId === summary.studentId);
        for (const finding of stalled) expect(finding.key).not.toContain(proved);
      }
    expect(alone).toBeGreaterThan(0);
  });

  it("of what it names over the season at most one in twenty is false, and one more by chance", () => {
    const told = new Map<string, "right" | "false">();
    for (const { judged, findings } of days)
      for (const { judgement, simulated } of judged) {
        const { id, change } = judgement.verdict;
        if (!findings.some((finding) => isProof(finding) && finding.key.split(" ")[1] === id)) continue;
        const at = simulated.changeAt === null ? undefined : simulated.track.sessions[simulated.changeAt]?.date;
        const right = at !== undefined && (change?.provedOn ?? "") >= at;
        told.set(id, told.get(id) === "false" || !right ? "false" : "right");
      }
    const wrong = [...told.values()].filter((is) => is === "false").length;
    expect(told.size).toBeGreaterThan(20);
    expect(wrong).toBeLessThanOrEqual(Math.floor(told.size * 0.05) + 1);
  });
});
