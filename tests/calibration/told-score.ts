import { listingOf, withListing } from "@/app/_server/roster/listing";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { buildFamilyStory } from "@/lib/report/family-story";
import type { StorySource } from "@/lib/report/family-story-source";
import { buildTellMessage } from "@/lib/report/tell-message";
import { toldFindings } from "@/lib/report/told-findings";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { wordsFor } from "@/lib/words/catalogue";
import { flat, step } from "@/seed/level-path";
import { learnAcademy, type Scenario, type SimulatedTrack, simulateTrack } from "./population";
import { WITHOUT_PLANS } from "./season-score";

/** A simulated academy over one season. */
export interface ToldAcademy {
  readonly families: number;
  readonly fundamentals: number;
  /** Films of the season. */
  readonly sessions: number;
  /** Families whose first fundamental moves by four sds of a session mean; 0: nothing changes at all. */
  readonly changing: number;
}

/** SEASON.md 19: a season in which nothing changes. */
export const TOLD_ACADEMY: ToldAcademy = { families: 60, fundamentals: 8, sessions: 20, changing: 0 };

function scenarioOf({ sessions, changing, fundamentals }: ToldAcademy, number: number): Scenario {
  const changes = number % fundamentals === 0 && number / fundamentals < changing;
  return {
    ...{ name: "told", sessions },
    change: changes ? [Math.floor(sessions / 3), Math.floor(sessions / 2)] : null,
    path: (at) => (changes ? step(0, 4, at) : flat(0)),
  };
}

/** What the families of an academy were told over one season. */
export interface ToldScore {
  readonly families: number;
  /** With a change on the list after any film of the season: whoever is told after every film. */
  readonly everListed: number;
  /** Whose message tells a change after the season's last film. */
  readonly toldAtEnd: number;
}

interface Judged {
  readonly family: number;
  readonly fundamental: (typeof BUILT_IN)[number];
  readonly simulated: SimulatedTrack;
  readonly verdict: TrackVerdict;
}

function judgedAcademy(academy: ToldAcademy, noise: NoiseModel, seed: number): readonly Judged[] {
  const { families, fundamentals } = academy;
  const judged = Array.from({ length: families * fundamentals }, (_, number) => {
    const simulated = simulateTrack(scenarioOf(academy, number), seed, number);
    const { verdict, listedLooks } = judgeTrack(simulated.track, noiseAlways(noise), WITHOUT_PLANS, "looks");
    const named = { ...verdict, id: `t${number}` };
    const fundamental = BUILT_IN[number % fundamentals] as (typeof BUILT_IN)[number];
    return { family: Math.floor(number / fundamentals), fundamental, simulated, verdict: named, listedLooks };
  });
  const listing = listingOf(judged);
  return judged.map(({ listedLooks: _looks, ...each }) => ({ ...each, verdict: withListing(each.verdict, listing) }));
}

/** The changes that the message of a family tells, by the program's own sentences. */
function messageTells(tracks: readonly Judged[]): number {
  const words = wordsFor("en");
  const today =
    tracks
      .map(({ simulated }) => simulated.track.sessions.at(-1)?.date ?? "")
      .sort()
      .at(-1) ?? "";
  const source: StorySource = {
    ...{ student: { alias: "Ari", hand: "right", birthYear: 2010 }, today, task: null, drills: [], practice: [] },
    ...{ videos: [], events: [], contact: null, openings: [] },
    tracks: tracks.map(({ fundamental, simulated, verdict }) => ({
      ...{ verdict, plateau: null },
      history: {
        fundamental,
        sessions: simulated.track.sessions.map(({ date }) => ({ session: { day: date }, apart: null })),
        ...{ begins: null, goal: simulated.track.goal },
      } as unknown as StorySource["tracks"][number]["history"],
    })),
  };
  const { good, changed, unsure, task, contact } = buildFamilyStory(words, source);
  const parts = { alias: "Ari", good, changed, unsure, task, contact, filming: "", pain: "", corrections: 0 };
  const { text } = buildTellMessage(parts);
  return toldFindings(words, source, text).length;
}

/** What the families of one academy were told, its noise learned from 60 tracks of its own. */
export function toldSeason(academy: ToldAcademy, seed: number): ToldScore {
  const judged = judgedAcademy(academy, learnAcademy(60, seed), seed);
  const families = Array.from({ length: academy.families }, (_, family) =>
    judged.filter((each) => each.family === family),
  );
  const isListed = ({ verdict }: Judged): boolean =>
    (verdict.looks ?? []).some((look) => look.listed === true && look.verdict !== "open" && look.verdict !== "steady");
  return {
    families: families.length,
    everListed: families.filter((tracks) => tracks.some(isListed)).length,
    toldAtEnd: families.filter((tracks) => messageTells(tracks) > 0).length,
  };
}
