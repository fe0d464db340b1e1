import { readAskings } from "@/db/read/asking";
import { readAssignments } from "@/db/read/drills";
import { readEvents } from "@/db/read/events";
import { readOpenMatters } from "@/db/read/handing";
import { readRereadDraws } from "@/db/read/rereads";
import { readStudent } from "@/db/read/students";
import { askingOf } from "@/lib/domain/asking";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { CONSENT_KINDS } from "@/lib/domain/consent";
import type { StudentEvent } from "@/lib/domain/student";
import { buildInherit } from "@/lib/report/build-inherit";
import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayDose } from "@/lib/words/say-dose";
import { sayEventDays } from "@/lib/words/say-event";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { currentInstant, dayIn } from "../clock";
import { standingOf } from "../consent/consent-gate";
import type { StudentViewer } from "../gate";
import { loadSeason } from "../season/load-season";
import { loadAcademyRules } from "../season/student-record";
import { handingState } from "./handing-state";
import { hasSeen, inheritedBy } from "./inherited";
import { trySettlingDrafts } from "./settle-drafts";
import { peoplePart, smallForm } from "./small-form";
import { loadTenTwicePart } from "./ten-twice-part";

/** Pauses that ended longer ago than this, in days, say little about how a body stands now. */
const PAUSES_DAYS = 180;

/** What the page is asked with: what became of a press. */
export interface AskedInherit {
  readonly done?: string;
  readonly why?: string;
}

/** Who gave the student, what they wrote, and the button that puts the notice away. */
function giverPart(viewer: StudentViewer): PeoplePart {
  const { words, student } = viewer;
  const margin = words.say("inherit.margin.giver");
  const charge = inheritedBy(viewer);
  if (charge === null) return peoplePart(margin, { paragraphs: [words.say("inherit.not-inherited")] });
  const days = {
    from: sayDay(words, charge.fromDay, "full"),
    until: charge.untilDay === null ? "" : sayDay(words, charge.untilDay, "full"),
  };
  const hidden = [{ name: "studentId", value: student.studentId }];
  return peoplePart(margin, {
    heading: words.say(`inherit.got.${charge.kind}`, { coach: charge.fromCoach, ...days }),
    paragraphs:
      charge.note === null
        ? [words.say("inherit.no-note")]
        : [words.say("inherit.note", { coach: charge.fromCoach, note: charge.note })],
    forms: hasSeen(viewer, charge.id)
      ? []
      : [{ act: "seen", form: smallForm(words, "inherit.seen", [], undefined, hidden) }],
  });
}

function sayDrills(viewer: StudentViewer): readonly string[] {
  const { words, db, student } = viewer;
  const running = readAssignments(db, student).filter(({ end }) => end === null);
  return [
    words.say("inherit.drills", { count: running.length }),
    ...running.map(({ drill, start, ...given }) =>
      words.say("inherit.drill", {
        drill,
        dose: sayDose(words, given),
        since: sayDay(words, start, "short"),
        days: dayNumber(viewer.today) - dayNumber(start),
      }),
    ),
  ];
}

/** The films that were promised for a question, with the day on which they were planned: the next re-measure. */
function sayPlans(viewer: StudentViewer): readonly string[] {
  const { words, db, scope, academy, student } = viewer;
  const { fundamentals } = loadAcademyRules(db, scope, academy);
  const decided = readAskings(db, student);
  const latest = decided.filter((each) => askingOf(decided, each) === each);
  const planned = latest.flatMap(({ state, plan, fundamentalId, day }) => {
    const fundamental = fundamentals.find(({ id }) => id === fundamentalId);
    if (state !== "planned" || plan === null || !fundamental) return [];
    return [
      words.say("inherit.plan", {
        name: sayFundamental(words, fundamental),
        films: plan.sessions,
        day: sayDay(words, day, "short"),
      }),
    ];
  });
  return planned.length === 0 ? [words.say("inherit.no-plans")] : planned;
}

function sayConsents(viewer: StudentViewer): readonly string[] {
  const { words, student } = viewer;
  return CONSENT_KINDS.map((kind) => {
    const standing = standingOf(viewer, student, kind);
    const given = standing.kind === "given" ? standing : null;
    return words.say(`inherit.consent.${kind}`, {
      state: given ? "given" : "missing",
      by: given?.by.at(-1)?.givenBy ?? "",
      until: given?.until ? sayDay(words, given.until, "day-year") : "",
      hasUntil: given?.until ? "yes" : "no",
    });
  });
}

/** Days alone: where it hurts is for whoever may see it, on the page of events. */
function sayPauses({ words, db, student, today }: StudentViewer): readonly string[] {
  const since = dayFromNumber(dayNumber(today) - PAUSES_DAYS);
  const isPause = ({ kind }: StudentEvent): boolean => ["injury", "pause", "break"].includes(kind);
  const pauses = readEvents(db, student).filter(
    (event) => isPause(event) && event.day <= today && (event.endDay ?? today) >= since,
  );
  if (pauses.length === 0) return [words.say("inherit.no-pauses", { stretch: sayStretch(words, since, today) })];
  return pauses.map((event) => words.say(`inherit.pause.${event.kind}`, { days: sayEventDays(words, event) }));
}

function openPart(viewer: StudentViewer): PeoplePart {
  const { words, db, student, academy, scope } = viewer;
  const page = `/students/${student.studentId}`;
  const open = readOpenMatters(db, student, scope, currentInstant());
  const { drafts, links } = open;
  const firstEnd =
    links.firstEnd === null ? "" : sayDay(words, dayIn(academy.zone, new Date(links.firstEnd)), "day-year");
  const visible = new Set(readRereadDraws(db, scope).map(({ id }) => id));
  const draws = open.draws.filter(({ id }) => visible.has(id));
  return peoplePart(words.say("inherit.margin.open"), {
    heading: words.say("inherit.open.heading"),
    paragraphs: [
      ...sayDrills(viewer),
      ...sayPlans(viewer),
      ...(drafts.length === 0
        ? [words.say("handing.along.no-drafts")]
        : drafts.map(({ name, count }) => words.say("inherit.drafts", { name, count }))),
      words.say("handing.along.links", { live: links.live, firstEnd }),
      ...sayConsents(viewer),
      ...sayPauses(viewer),
    ],
    links: [
      { href: `${page}/drills`, label: words.say("drills") },
      { href: "/record", label: words.say("inherit.go-record") },
      { href: `${page}/family`, label: words.say("privacy.link.family") },
      { href: `${page}/consent`, label: words.say("privacy.link.consent") },
      { href: `${page}/events`, label: words.say("happen.events") },
      ...draws.map(({ id, reader }) => ({ href: `/rereads/${id}`, label: words.say("inherit.draw", { reader }) })),
    ],
  });
}

/** What a coach gets with a student: where they stand, what lies open, and what a new reader costs. */
export async function loadInherit(viewer: StudentViewer, { done, why }: AskedInherit): Promise<PeoplePage> {
  trySettlingDrafts(viewer);
  const { words, db, student } = viewer;
  const { alias, id } = readStudent(db, student);
  const season = await loadSeason(viewer, undefined);
  const inHand = season.evidence.groups.flatMap(({ rows }) => rows).find(({ place }) => place === "in-hand");
  return {
    title: words.say("inherit.title", { alias }),
    documentTitle: words.say("document-title", { page: words.say("inherit.document-title") }),
    lede: words.say("inherit.lede"),
    back: { href: `/students/${id}/handing-over`, label: words.say("privacy.link.handing-over") },
    notice: done !== undefined && words.has(`inherit.done.${done}`) ? words.say(`inherit.done.${done}`) : "",
    parts: [
      giverPart(viewer),
      ...buildInherit(words, season, id),
      openPart(viewer),
      loadTenTwicePart(viewer, handingState(viewer), { why, inHand: inHand?.fundamentalId }),
    ],
  };
}
