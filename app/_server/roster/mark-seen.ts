import { insertSeen } from "@/db/write/seen";
import { BRIEF_WORDS } from "@/lib/report/brief-model";
import { currentInstant } from "../clock";
import { type Viewer, viewerKey } from "../gate";
import { findForBrief } from "./load-brief";
import { loadEveryone } from "./load-everyone";
import { newProofs } from "./new-proofs";
import { keepPutAway } from "./put-away";

/** Keeps that this viewer has seen everything that is proved now of those who are here: what their roster says is new. */
export async function markSeen(viewer: Viewer): Promise<void> {
  const keys = newProofs(await loadEveryone(viewer), new Set()).map((proof) => proof.key);
  insertSeen(viewer.db, viewer.scope, {
    viewer: viewerKey(viewer),
    seenAt: currentInstant(),
    asOf: viewer.today,
    body: JSON.stringify(keys),
  });
}

/**
 * Puts a line of the brief away, a whole list of it, or brings a line back. What the form names is looked for among what
 * there is now: a line that has changed meanwhile stays where it is.
 */
export async function markDealtWith(viewer: Viewer, data: FormData): Promise<void> {
  const { findings } = findForBrief(viewer, await loadEveryone(viewer), String(data.get("weeks") ?? ""));
  const [put, back, list] = ["put", "back", "list"].map((name) => data.get(name));
  const word = BRIEF_WORDS.find((each) => each === list);
  const chosen = findings.filter(({ key, word: own }) => (word === undefined ? key === (put ?? back) : own === word));
  keepPutAway(viewer, chosen, word === undefined && put === null ? "stands" : "put-away", findings);
}
