import type { Words } from "@/lib/words/catalogue";
import { sayCount } from "@/lib/words/say-family-story";
import { familyReader } from "./family-findings";
import type { StorySource } from "./family-story-source";

/** One true good thing of the videos: how many were good to use; empty: there is nothing of that to say. */
export function familyVideos(
  words: Words,
  {
    student,
    today,
    videos,
  }: Pick<StorySource, "today" | "videos"> & { readonly student: Pick<StorySource["student"], "birthYear"> },
): string {
  if (videos.length === 0) return "";
  const used = videos.filter(({ use }) => use === "used").length;
  const streak = videos.length - 1 - videos.findLastIndex(({ use }) => use === "apart");
  if (familyReader(student, today) === "young") return used === 0 ? "" : words.say("family.good.videos.young");
  if (used === 0) return words.say("family.good.made", { videos: videos.length });
  return streak >= 2 || streak === videos.length
    ? words.say("family.good.streak", { videos: streak, count: sayCount(words, streak) })
    : words.say("family.good.used", { used, videos: videos.length });
}
