import type { ApartReason, HistorySession } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";

const CAMERA: Partial<Readonly<Record<Extract<ApartReason, { kind: "camera" }>["why"], string>>> = {
  ...{ "yaw-too-large": "side", "offset-too-large": "side", "too-near": "near", "pitch-too-large": "tipped" },
  ...{ "no-stick": "stick", "too-slow": "unclear", "set-aside": "coach" },
};

function whyKey(apart: ApartReason): string {
  switch (apart.kind) {
    case "circumstance":
      return apart.circumstance === "in-lesson" ? "lesson" : "aid";
    case "camera":
      return CAMERA[apart.why] ?? "unclear";
    case "fingerprint":
      return "side";
    case "before":
      return "before";
    // What the coach wrote may be meant for the coach alone.
    case "set-aside":
      return "coach";
  }
}

/** Why the empty dots of a family's picture don't count: one sentence for each reason, in the order of the first such video. */
export function familyEmptyDots(
  words: Words,
  sessions: readonly Pick<HistorySession, "apart">[],
  reader: "young" | "other",
): readonly string[] {
  const dots = new Map<string, number>();
  for (const { apart } of sessions) {
    if (apart === null) continue;
    const why = whyKey(apart);
    dots.set(why, (dots.get(why) ?? 0) + 1);
  }
  const key = reader === "young" ? "family-page.empty.young" : "family-page.empty";
  return [...dots].map(([why, count]) =>
    words.say(key, { dots: count, why: words.say(`family-page.empty.why.${why}`) }),
  );
}
