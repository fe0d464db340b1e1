import type { FamilyKeep } from "@/lib/report/family-practice-model";
import type { KeptLog } from "./practice-store";

type Counted = Pick<KeptLog, "day" | "minutes" | "balls" | "felt">;

/** A log in one line: its day and what was practised. */
export function sayLog({ words, days }: FamilyKeep, { day, minutes, balls, felt }: Counted): string {
  const said = [
    minutes === "" ? "" : words.minutes.replace("{minutes}", minutes),
    balls === "" ? "" : (balls === "1" ? words["one-ball"] : words.balls).replace("{balls}", balls),
    felt === "easy" || felt === "hard" ? words[felt] : "",
  ].filter((part) => part !== "");
  const spoken = days.find(([each]) => each === day)?.[1] ?? day;
  return words.line.replace("{day}", spoken).replace("{said}", said.join(", "));
}

/** Why a log can't be kept as it was typed, in the words in which the server would refuse it; empty: it can. */
export function whyNotKept({ words, most }: FamilyKeep, { minutes, balls }: Counted): string {
  if (minutes === "" && balls === "") return words["no-practice"];
  for (const typed of [minutes, balls]) {
    if (!/^\d*$/.test(typed)) return words["not-a-count"];
    if (/^0+$/.test(typed)) return words["practice-of-nothing"];
  }
  if (Number(minutes) > most.minutes) return words["much-practice"];
  return Number(balls) > most.balls ? words["many-balls"] : "";
}
