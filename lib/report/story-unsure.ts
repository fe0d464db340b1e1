import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { Words } from "@/lib/words/catalogue";
import { sayCount } from "@/lib/words/say-family-story";
import type { StorySource } from "./family-story-source";
import { type StoryFinding, UNSURE } from "./story-findings";
import { type StoryTelling, sayStoryTold } from "./story-sentences";

/** What stands against telling, or what would probably tell. */
type Why =
  | { readonly kind: "real" | "nothing" | "first"; readonly videos: number }
  | { readonly kind: "no-plan" | "placement" | "reader" | "camera" }
  | null;

/** What would probably tell: of a change as large as it looks, or of none; and what is there to be waited for. */
function planOf({ settle, settleIfReal, settleIfNothing }: TrackVerdict): Why {
  if (settleIfReal !== null)
    return "sessions" in settleIfReal ? { kind: "real", videos: settleIfReal.sessions } : { kind: "no-plan" };
  if (settle !== null && "none" in settle && settle.none === "first-look" && settle.sessionsToFirstLook > 0)
    return { kind: "first", videos: settle.sessionsToFirstLook };
  return settleIfNothing === null ? null : { kind: "nothing", videos: settleIfNothing.sessions };
}

/** Whether the last video of it was left out for where the phone stood. */
function lastLeftOut({ track }: StoryFinding): "camera" | "no" {
  const why = track.history.sessions.at(-1)?.apart;
  return why?.kind === "camera" || why?.kind === "fingerprint" ? "camera" : "no";
}

function whysOf(found: StoryFinding): readonly Exclude<Why, null>[] {
  const { notToldApart } = found.track.verdict;
  const against: Why =
    notToldApart !== null ? { kind: notToldApart.from } : lastLeftOut(found) === "camera" ? { kind: "camera" } : null;
  const plan = planOf(found.track.verdict);
  return [against, plan].filter((why) => why !== null);
}

/** What lets it be looked at anew, said of what is open since then; empty: nothing did. */
function sayBegins(words: Words, { track }: StoryFinding, { events }: StorySource): string {
  const { begins, fundamental } = track.history;
  const event =
    begins === null
      ? undefined
      : events.find(({ day, rebaselines }) => day === begins && rebaselines.includes(fundamental.id));
  if (event === undefined) return "";
  const kind = ["break", "injury", "pause"].includes(event.kind) ? "pause" : event.kind;
  return words.say(`family-story.why.event.${kind}`);
}

/** Open things by how much there is to say of them: the ones that look like something first, then those with the shortest plan. */
function rankOf(found: StoryFinding): number {
  const videos = whysOf(found).flatMap((why) => ("videos" in why ? [why.videos] : []))[0] ?? 100;
  return 1000 * UNSURE.indexOf(found.kind) + videos;
}

/** What can't be told yet, the one thing of it first: that of the drill in hand, else the one nearest to being told. */
export function unsureFirst(
  told: readonly StoryFinding[],
  { task }: Pick<StorySource, "task">,
): readonly StoryFinding[] {
  const open = told.filter(({ kind }) => UNSURE.includes(kind));
  const inHand = open.filter(({ track }) => track.history.fundamental.id === task?.fundamentalId);
  const others = open.filter((found) => !inHand.includes(found)).sort((a, b) => rankOf(a) - rankOf(b));
  return [...inHand, ...others];
}

/** What can't be told yet of one thing, why, and what would probably tell it. To the youngest it is said that we are looking. */
export function sayStoryUnsure(words: Words, found: StoryFinding, telling: StoryTelling): string {
  const told = sayStoryTold(words, found, telling);
  if (telling.reader === "young" || found.kind === "away") return told;
  const whys = whysOf(found).map((why) =>
    words.say(`family-story.why.${why.kind}`, "videos" in why ? { ...why, count: sayCount(words, why.videos) } : {}),
  );
  const begins = found.kind === "open" ? sayBegins(words, found, telling.source) : "";
  const followed = found.track.followed ? words.say(`family-story.followed.${found.track.followed}`) : "";
  return [told, begins, followed, ...whys].filter((text) => text !== "").join(" ");
}
