import { z } from "zod";
import type { ArchivedStudent } from "@/lib/domain/archive";
import type { ArchivedSnapshot } from "@/lib/domain/archive-session";
import {
  type ArchivedCarried,
  carriedChange,
  carriedInterval,
  carriedText,
  type SaidLook,
} from "@/lib/domain/carried-look";
import { VERDICTS } from "@/lib/domain/track-verdict";

const look = z.object({
  date: z.string(),
  verdict: z.enum(VERDICTS),
  logBayesFactor: z.number(),
  directionUp: z.number(),
});

/** Of a snapshot's body what is carried on; whatever else stands in it is passed over. */
const snapshotBody = z.object({
  verdict: z.object({
    moved: z.enum(["within", "through"]).nullable(),
    evidence: z.object({ noChange: z.number() }),
    levelNow: carriedInterval.nullable(),
    position: z.enum(["inside", "outside", "edge"]).nullable(),
    change: carriedChange.nullable(),
    changeBelow: z.number().nullable(),
    ownedSince: z.string().nullable(),
    looks: z.array(look).default([]),
  }),
});

/** What was said of one track, look by look in date order; empty: the snapshot isn't one. */
export function saidLooks({ body, listed, listedLooks }: ArchivedSnapshot): readonly SaidLook[] {
  let parsed: z.infer<typeof snapshotBody>;
  try {
    parsed = snapshotBody.parse(JSON.parse(body));
  } catch {
    return [];
  }
  const { looks, evidence, levelNow, ...verdict } = parsed.verdict;
  const { moved, position, change, changeBelow, ownedSince } = verdict;
  return looks.map((one, at) => {
    const isLast = at === looks.length - 1;
    const whole = { sessions: looks.length, noChange: evidence.noChange, level: levelNow };
    return {
      ...one,
      listed: isLast ? listed : (listedLooks[at] ?? false),
      whole: isLast ? { ...whole, moved, position, change, changeBelow, ownedSince } : null,
    };
  });
}

function keyOf(sessionId: string, fundamentalId: string, clubGroup: string): string {
  return JSON.stringify([sessionId, fundamentalId, clubGroup]);
}

type Session = ArchivedStudent["sessions"][number];

/** Looks by the sessions after which they were said: the last look after the last session, and so on back while the days agree. */
function placed(
  sessions: readonly Session[],
  { fundamentalId, clubGroup }: ArchivedSnapshot,
  looks: readonly SaidLook[],
) {
  const mine = sessions.flatMap((session) => {
    const named = session.looks.find((one) => one.fundamentalId === fundamentalId && one.clubGroup === clubGroup);
    return named ? [{ session, noiseModelName: named.noiseModelName }] : [];
  });
  const found: { readonly said: SaidLook; readonly session: Session; readonly noiseModelName: string }[] = [];
  for (let back = 1; back <= Math.min(mine.length, looks.length); back++) {
    const [said, at] = [looks.at(-back), mine.at(-back)];
    if (!said || !at || said.date !== at.session.day) break;
    found.unshift({ said, ...at });
  }
  return found;
}

function textOf(look: SaidLook): string | null {
  try {
    return carriedText(look);
  } catch {
    return null;
  }
}

/** The longest name of a policy that is carried, in characters. */
const LONGEST_POLICY = 100;

/**
 * The looks of an archived student as the archive's academy said them, to be kept beside what another academy will say: those
 * that it had from a third one first, as it had them.
 *
 * @param saidBy the name under which the archive's academy goes, at most 200 characters
 * @param kept looks that this academy says anew by the very same noise model: they need no carrying
 */
export function carryLooks(
  student: ArchivedStudent,
  saidBy: string,
  kept: (look: Session["looks"][number]) => boolean,
): readonly ArchivedCarried[] {
  const carried = new Map(student.carried.map((one) => [keyOf(one.sessionId, one.fundamentalId, one.clubGroup), one]));
  for (const snapshot of student.snapshots) {
    const { fundamentalId, clubGroup, policyVersion } = snapshot;
    if (policyVersion.length > LONGEST_POLICY) continue;
    for (const { said, session, noiseModelName } of placed(student.sessions, snapshot, saidLooks(snapshot))) {
      const key = keyOf(session.id, fundamentalId, clubGroup);
      const body = textOf(said);
      if (body === null || carried.has(key) || kept({ fundamentalId, clubGroup, noiseModelName })) continue;
      carried.set(key, {
        sessionId: session.id,
        fundamentalId,
        clubGroup,
        saidBy,
        policyVersion,
        noiseModelName,
        body,
      });
    }
  }
  return [...carried.values()];
}
