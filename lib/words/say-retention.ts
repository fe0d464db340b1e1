import type { Retention } from "@/lib/verdict/decide-retention";
import type { Words } from "./catalogue";

/**
 * Whether a gain stays without practice, in a sentence or two.
 *
 * @param rest days after the last practice from which a film tells what stays
 */
export function sayRetention(words: Words, retention: Retention, rest: number): string {
  const { kind } = retention;
  const soon = kind === "soon" && retention.most === 0 ? "same-day" : kind;
  const said = words.say(`retention.${soon}`, {
    rest,
    ...("films" in retention ? { films: retention.films } : {}),
    ...("most" in retention ? { most: retention.most } : {}),
    ...("least" in retention ? { days: sayDays(words, retention), by: retention.by } : {}),
  });
  return kind === "held" || kind === "lost" ? said : `${said} ${words.say("retention.would-tell", { rest })}`;
}

function sayDays(words: Words, { least, most }: { readonly least: number; readonly most: number }): string {
  return least === most
    ? words.say("retention.days", { days: most })
    : words.say("retention.days-between", { least, most });
}
