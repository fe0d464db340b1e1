import { z } from "zod";
import { isCalendarDay } from "./calendar-day";
import { isBuiltInId } from "./catalogue";
import { isClubGroup } from "./club-group";
import { isOwnId } from "./fundamental";

/** The longest text of an archive, in characters; a note of a session is far below it, a longer one is no note. */
export const LONGEST_TEXT = 20_000;

const LONE_HALF = /\p{Surrogate}/u;
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?Z$/;

/** Text that a database gives back as it was given: no half of a surrogate pair. */
export const anyText = z.string().refine((value) => !LONE_HALF.test(value), "half-character");

/** Text that a person typed. */
export const text = anyText.max(LONGEST_TEXT);

/** A text that stands for something; never empty. */
export const id = text.min(1).max(200);

/** `YYYY-MM-DD`. */
export const day = z.string().refine(isCalendarDay, "not-day");

/** ISO time in UTC. */
export const instant = z.string().regex(INSTANT, "not-instant");

export const number = z.number().finite();
export const count = z.number().int().min(0).max(1_000_000_000);

export const fundamentalId = z.string().refine((value) => isBuiltInId(value) || isOwnId(value), "not-fundamental");
export const clubGroup = z.string().max(200).refine(isClubGroup, "not-club-group");

/** Short words, separated by commas. */
export const joined = text;
