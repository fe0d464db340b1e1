import { z } from "zod";
import { readErasedGroup } from "@/db/read/erased-group";
import { readErasure } from "@/db/read/erasures";
import { readStudent } from "@/db/read/students";
import { SAID_REASONS } from "@/lib/domain/erasure";
import type { Link } from "@/lib/report/basic-model";
import type { PeoplePage } from "@/lib/report/people-model";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { dayIn } from "../clock";
import type { StudentViewer, Viewer } from "../gate";
import { peoplePart } from "../people/small-form";
import { clearTracesSoon, type Traces } from "./clear-traces";
import { eraseGroup } from "./erase-group";
import { forgetInMemory } from "./forget-in-memory";
import { dropLeftovers } from "./old-copies";

/** What came of a press; `why` names what was wrong, and nothing was erased. */
export type EraseOutcome =
  | { readonly kind: "erased"; readonly erasureId: string; readonly traces: Traces }
  | { readonly kind: "refused"; readonly why: "alias" | "reason" };

const reasonSchema = z.enum(SAID_REASONS);

/** Erases a student when it is meant: the reason is said, and the alias typed as it stands on the page. */
export async function eraseWhenMeant(viewer: StudentViewer, data: FormData): Promise<EraseOutcome> {
  const { db, student, name, words } = viewer;
  const reason = reasonSchema.safeParse(data.get("reason"));
  if (!reason.success) return { kind: "refused", why: "reason" };
  const typed = String(data.get("alias") ?? "")
    .normalize("NFC")
    .trim();
  if (typed !== readStudent(db, student).alias.trim()) return { kind: "refused", why: "alias" };
  const erased = eraseGroup(db, readErasedGroup(db, student), { who: name, reason: reason.data, words });
  if (!erased) return { kind: "refused", why: "alias" };
  forgetInMemory(viewer, erased.naming);
  // Whoever serves has the folder: no restore is at work in it.
  dropLeftovers(db.file);
  return { kind: "erased", erasureId: erased.erasureId, traces: await clearTracesSoon(db) };
}

function noErasure(words: Words, back: Link): PeoplePage {
  return {
    title: words.say("erased.none"),
    documentTitle: words.say("document-title", { page: words.say("erased.none") }),
    lede: words.say("erased.none.text"),
    back,
    notice: "",
    parts: [
      peoplePart(words.say("erased.margin.what"), {
        links: [{ href: "/people/keeping", label: words.say("keeping.link-here") }],
      }),
    ],
  };
}

/** What the page after an erasure is asked with. */
export interface ErasedWish {
  readonly of?: string;
  readonly traces?: string;
}

/** The page after an erasure: what was erased, what becomes of copies, and words that can be sent to the family; without one, where all are told. */
export function loadErased(viewer: Viewer, { of, traces }: ErasedWish): PeoplePage {
  const { db, scope, words, academy } = viewer;
  const found = readErasure(db, scope, of ?? "");
  const back = { href: "/students", label: words.say("erased.back") };
  if (!found) return noErasure(words, back);
  const on = dayIn(academy.zone, new Date(found.erasedAt));
  const days = ERASING_THRESHOLDS.copyDays.value;
  const said = { on: sayDay(words, on, "day-year"), sessions: found.sessions, readings: found.readings, days };
  return {
    title: words.say("erased.title"),
    documentTitle: words.say("document-title", { page: words.say("erased.title") }),
    lede: words.say("erased.lede", said),
    back,
    notice: traces === "left" ? words.say("erased.traces") : "",
    parts: [
      peoplePart(words.say("erased.margin.what"), {
        paragraphs: [words.say("erased.what"), words.say("erase.copies", said), words.say("erased.elsewhere")],
      }),
      peoplePart(words.say("erased.margin.family"), {
        paragraphs: [words.say("erased.family.text")],
        once: { lines: [words.say("erased.family.words", { ...said, academy: academy.name })], picture: null },
      }),
    ],
  };
}
