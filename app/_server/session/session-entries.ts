import type { FiledCapture } from "@/db/read/sessions";
import type { Hand } from "@/lib/domain/handedness";
import { type Sided, sideOf } from "@/lib/domain/picture-side";
import type { Session } from "@/lib/domain/session";
import type { SessionFacts } from "@/lib/domain/session-change";

type Entry = readonly [string, string];

const text = (value: string | number | null): string => (value === null ? "" : String(value));

/** A signed amount as its size and its side of the picture. */
function sided(film: FiledCapture, field: string, what: Sided, hand: Hand, amount: number | null): readonly Entry[] {
  const side = amount === null ? null : sideOf(film.view, what, hand, amount);
  return [
    [`${field}.${film.view}`, amount === null ? "" : String(Math.abs(amount))],
    [`${field}Side.${film.view}`, side ?? ""],
  ];
}

function filmEntries(film: FiledCapture, hand: Hand): readonly Entry[] {
  const { view, seen } = film;
  return [
    [`placement.${view}`, film.placement],
    [`placementLabel.${view}`, text(film.placementLabel)],
    [`squareness.${view}`, film.squareness],
    [`offBy.${view}`, text(film.offBy)],
    [`placedBy.${view}`, text(film.placedBy)],
    [`film.${view}`, text(film.filmReference)],
    [`aside.${view}`, text(film.setAsideReason)],
    ...sided(film, "pointing", "pointingStickLean", hand, seen.pointingStickLean),
    ...sided(film, "across", "acrossStickSlope", hand, seen.acrossStickSlope),
    ...sided(film, "plumb", "plumbLean", hand, seen.plumbLean),
    ...(view === "down-the-line" ? sided(film, "beside", "phone", hand, seen.besideHandsCm) : []),
    [`lens.${view}`, text(seen.lensHeightCm)],
    [`hands.${view}`, text(seen.handsHeightCm)],
    [`distance.${view}`, text(seen.distanceCm)],
    [`frames.${view}`, text(seen.framesPerSecond)],
    [`shutter.${view}`, text(seen.shutterPerSecond)],
  ];
}

/** A session on file as its form would have been filled in: the same form read again gives the same session. */
export function sessionEntries(session: Session, films: readonly FiledCapture[], hand: Hand): readonly Entry[] {
  return [
    ["day", session.day],
    ["clubGroup", session.clubGroup],
    ["club", text(session.club)],
    ["circumstance", session.circumstance],
    ["aid", text(session.aid)],
    ["daysSincePractice", text(session.daysSincePractice)],
    ["solid", text(session.solid)],
    ["balls", text(session.balls)],
    ["note", text(session.note)],
    ["reader", session.reader],
    ["setAside", text(session.setAsideReason)],
    ...films.flatMap((film) => filmEntries(film, hand)),
  ];
}

/**
 * Facts from a form, with what the form left as it stood taken from what is on file: a form can't say everything that a file
 * may have brought, and nothing is to change unseen.
 *
 * @param sent fields as they were sent; absent ones count as left
 */
export function keepUntouched(
  facts: SessionFacts,
  sent: ReadonlyMap<string, string>,
  { session, films, hand }: { readonly session: Session; readonly films: readonly FiledCapture[]; readonly hand: Hand },
): SessionFacts {
  const shown = sessionEntries(session, films, hand);
  const isLeft = (name: string): boolean => {
    const before = shown.find(([each]) => each === name)?.[1] ?? "";
    return (sent.get(name) ?? before).normalize("NFC").trim() === before.normalize("NFC").trim();
  };
  const captures = facts.captures.map((film) => {
    const filed = films.find((each) => each.view === film.view);
    if (!filed || !filmEntries(filed, hand).every(([name]) => isLeft(name))) return film;
    const { sessionId: _session, ...kept } = filed;
    return kept;
  });
  return {
    ...facts,
    ...(isLeft("aid") && isLeft("circumstance") ? { aid: session.aid } : {}),
    ...(isLeft("solid") && isLeft("balls") ? { solid: session.solid, balls: session.balls } : {}),
    ...(isLeft("note") ? { note: session.note } : {}),
    ...(isLeft("reader") ? { reader: session.reader } : {}),
    ...(isLeft("setAside") ? { setAsideReason: session.setAsideReason } : {}),
    ...(isLeft("club") ? { club: session.club } : {}),
    captures,
  };
}
