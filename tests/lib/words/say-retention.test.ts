import { expect, it } from "vitest";
import type { Retention } from "@/lib/verdict/decide-retention";
import { wordsFor } from "@/lib/words/catalogue";
import { sayRetention } from "@/lib/words/say-retention";

const words = wordsFor("en");
const tell = "A film without practice in the 7 days before it would tell.";
const rested = { films: 1, least: 9, most: 9, by: "said" } as const;

it.each([
  [{ kind: "held", ...rested }, "Held 9 days after the last practice, on one film: it stays without practice."],
  [
    { kind: "held", films: 3, least: 8, most: 21, by: "logged" },
    "Held 8 to 21 days after the last practice that was logged, on 3 films: it stays without practice.",
  ],
  [
    { kind: "lost", ...rested },
    "The film 9 days after the last practice fits the old level: it is there right after practice and doesn’t stay yet.",
  ],
  [
    { kind: "lost", films: 2, least: 7, most: 9, by: "said" },
    "The 2 films 7 to 9 days after the last practice fit the old level: it is there right after practice and doesn’t stay yet.",
  ],
  [
    { kind: "unclear", ...rested },
    `One film 9 days after the last practice can’t tell the new level from the old: whether it stays is not known yet. ${tell}`,
  ],
  [
    { kind: "soon", films: 4, most: 2 },
    `So far seen only within 2 days after practice, on 4 films: whether it stays is not known yet. ${tell}`,
  ],
  [
    { kind: "soon", films: 1, most: 0 },
    `So far seen only on days of practice, on one film: whether it stays is not known yet. ${tell}`,
  ],
  [
    { kind: "unknown", films: 1 },
    `Nobody said how long practice had rested before the film since then: whether it stays is not known yet. ${tell}`,
  ],
  [{ kind: "unfilmed" }, `No film counts since then: whether it stays is not known yet. ${tell}`],
] as [Retention, string][])("%j reads: %s", (retention, said) => {
  expect(sayRetention(words, retention, 7)).toBe(said);
});

it("the reason names its source and both limits", () => {
  const reason = words.say("retention.reason", { rest: 7, times: 20 });
  for (const named of ["Guadagnoli", "7 days", "20 times"]) expect(reason).toContain(named);
});
