import { randomUUID } from "node:crypto";
import { readFamilyRequests, readOpenings } from "@/db/read/family-links";
import { readFamilyPractice } from "@/db/read/family-practice";
import { readConsents } from "@/db/read/students";
import { consentInForce } from "@/lib/domain/consent";
import { ASKED_BALLS, ASKED_MINUTES } from "@/lib/ingest/parse-practice-form";
import { buildFamilyPage } from "@/lib/report/build-family";
import type { FamilyPage } from "@/lib/report/family-model";
import { sayHour } from "@/lib/words/say-hour";
import { dayIn, daysHere, readClock } from "../clock";
import { askedToday } from "../consent/consent-gate";
import type { FamilyViewer } from "../family-gate";
import { latestDay } from "../keeping/watch-clock";
import { takeHeld } from "../people/shown-once";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { chooseClubGroup } from "../settings/club-links";
import type { TypedDay } from "./family-desk";
import { typedKey } from "./family-keys";
import { familyTask } from "./family-task";
import { loadLook } from "./load-look";
import { firstLogDay, loadStory } from "./load-story";
import { videosOf } from "./videos-of";

/** What a family reads on its page. */
export async function loadFamily(family: FamilyViewer, done: string | undefined): Promise<FamilyPage> {
  const { db, student, link, academy, today, words } = family;
  const verdicts = await loadStudentVerdicts(family);
  const clubGroup = chooseClubGroup(verdicts.grouping, verdicts.tracks, undefined);
  const dayOf = daysHere(academy);
  const typed = done === "refused" ? takeHeld<TypedDay>(typedKey(family)) : null;
  const asked = askedToday({ ...family, today: latestDay(family) }, verdicts.record.student);
  const practice = readFamilyPractice(db, family.pain, firstLogDay(today));
  const openings = readOpenings(db, student).flatMap(({ linkId, openedAt }) => (linkId === link.id ? [openedAt] : []));
  const story = loadStory(family, { verdicts, practice, openings: openings.map(dayOf) });
  return buildFamilyPage(words, {
    student: verdicts.record.student,
    ...{ link, today, dayOf },
    tracks: verdicts.tracks.filter(({ history }) => history.clubGroup === clubGroup),
    videos: videosOf(verdicts),
    task: familyTask(family, today),
    story,
    look: loadLook(family, verdicts, story),
    practice,
    events: verdicts.record.events,
    consents: readConsents(db, student).filter((each) => consentInForce([each], each.kind, asked)),
    requests: readFamilyRequests(db, student),
    openings,
    keepMonths: academy.keepMonths,
    done: done ?? null,
    ...{ typed, key: typed?.key ?? randomUUID(), most: { minutes: ASKED_MINUTES, balls: ASKED_BALLS } },
    sayAt: (instant) => sayHour(words, instant, academy.zone, dayIn(academy.zone, readClock())),
  });
}
