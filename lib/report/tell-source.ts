import type { Student } from "@/lib/domain/student";
import type { Told } from "@/lib/domain/told";
import type { FamilyPicture } from "./family-look-model";
import type { FamilyStory } from "./family-story-model";
import type { StorySource } from "./family-story-source";

/** The story as it leaves the house, and what belongs to it in every form. */
export interface Telling {
  readonly student: Pick<Student, "id" | "alias" | "hand" | "birthYear" | "language">;
  readonly today: string;
  /** Without anything of what hurts; the task is a stop while practice rests. */
  readonly story: FamilyStory;
  /** Whether practice rests, and the task is a stop. */
  readonly stopped: "yes" | "no";
  /** How the task is done, in finished sentences; empty: there is none, or practice rests. */
  readonly taskLines: readonly string[];
  /** The one correction for the next video; empty: none. */
  readonly filming: string;
  readonly picture: FamilyPicture | null;
  /** Of the story: from it the changes are read off a text as it is kept. */
  readonly source: StorySource;
  /** Everything that was told, whatever the clubs, oldest first. */
  readonly told: readonly Told[];
}

/** What a text on the page is kept by: a digest of it, by which a press finds that it has changed meanwhile. */
export type ShownDigests = Readonly<Record<"message" | "file" | "letter", string>>;
