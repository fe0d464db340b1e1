import type { FamilyStory } from "./family-story-model";

/** A message to a family holds at most so many letters (SEASON.md 20), so that it goes out as one. */
export const MESSAGE_LETTERS = 600;

/** What can be left out of a message, in the order in which it is. */
export const LEAVES_OUT = ["filming", "contact", "unsure", "good", "changed"] as const;

/** What can be left out of a message. */
export type LeftOut = (typeof LEAVES_OUT)[number];

/** What a message is made from: finished sentences; an empty one isn't said. */
export interface MessageSource extends Pick<FamilyStory, "good" | "changed" | "unsure" | "task" | "contact"> {
  readonly alias: string;
  /** The one correction for the next video. */
  readonly filming: string;
  /** What is said of pain, always. */
  readonly pain: string;
  /** Texts of `changed` that take something back: they are left out last of all. */
  readonly corrections: number;
}

/** A message, and what was left out for its length, in that order. */
export interface TellMessage {
  readonly text: string;
  readonly leftOut: readonly LeftOut[];
}

/**
 * What a family is told, as one plain message: what is good, what changed, what can't be told, the task, and the one correction
 * for the next video. Too long, it loses whole sentences in a fixed order and is never cut within one: first the correction for
 * the video, then the strikes, what can't be told, what is good, and the later of the changes. The task, what is said of pain
 * and what is taken back always stay.
 *
 * @returns at most `MESSAGE_LETTERS` letters, unless what always stays is longer
 */
export function buildTellMessage(source: MessageSource): TellMessage {
  const { alias, good, changed, unsure, task, contact, filming, pain, corrections } = source;
  const write = (left: readonly LeftOut[], changes: number): string =>
    [
      `${alias}:`,
      left.includes("good") ? "" : good,
      ...changed.slice(0, changes),
      left.includes("contact") ? "" : contact,
      left.includes("unsure") ? "" : unsure,
      task,
      left.includes("filming") ? "" : filming,
      pain,
    ]
      .filter((text) => text !== "")
      .join(" ");
  const has: Readonly<Record<LeftOut, boolean>> = {
    ...{ filming: filming !== "", contact: contact !== "", unsure: unsure !== "", good: good !== "" },
    changed: changed.length > corrections,
  };
  const tries: TellMessage[] = [{ text: write([], changed.length), leftOut: [] }];
  let left: readonly LeftOut[] = [];
  for (const each of LEAVES_OUT.filter((name) => has[name])) {
    left = [...left, each];
    const fewest = each === "changed" ? corrections : changed.length;
    for (let changes = each === "changed" ? changed.length - 1 : changed.length; changes >= fewest; changes -= 1)
      tries.push({ text: write(left, changes), leftOut: left });
  }
  return (tries.find(({ text }) => text.length <= MESSAGE_LETTERS) ?? tries.at(-1)) as TellMessage;
}
