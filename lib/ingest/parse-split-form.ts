import type { ClubGroup } from "@/lib/domain/club-group";
import type { FormOutcome } from "./field-issue";
import { collectIssues, ticked } from "./form-fields";
import { type MoveContext, readMove, type WishedMove } from "./parse-move-form";
import { readSessionFacts, type SessionFormContext } from "./parse-session-form";

/** Which swings go, to whom, and what is known of their session. */
export interface WishedSplit extends WishedMove {
  /** By number. */
  readonly swings: readonly number[];
  readonly day: string;
  readonly clubGroup: ClubGroup;
  readonly club: string | null;
}

/** The form that makes a session of its own of some swings: at least one goes and one stays. */
export function parseSplitForm(
  data: FormData,
  context: MoveContext &
    Pick<SessionFormContext, "today" | "grouping" | "birthYear"> & { readonly swings: readonly number[] },
): FormOutcome<WishedSplit> {
  const { issues, add } = collectIssues();
  const swings = ticked(data, "swings", context.swings.map(String), add).map(Number);
  if (swings.length === 0) add("swings", "no-swings");
  if (swings.length === context.swings.length) add("swings", "all-swings");
  const { day, clubGroup, club } = readSessionFacts(data, context, add);
  const move = readMove(data, context, add);
  if (issues.length > 0 || clubGroup === null || move === null) return { kind: "issues", issues };
  return { kind: "ok", value: { ...move, swings, day, clubGroup, club } };
}
