import { z } from "zod";

/** Most fields of one form, and characters of a name and of a value: beyond any form of the house, and within the door's limit. */
const FIELDS = 4000;
const NAME = 200;
const VALUE = 200_000;

const id = z.string().regex(/^[0-9a-f-]{36}$/);

const request = z.object({
  draft: id,
  form: z.string().regex(/^[a-z][a-z-]{0,39}$/),
  studentId: z.string().max(60),
  /** What of the student's it is for; empty: nothing else. A page of before this was told apart doesn't say. */
  of: z.string().max(NAME).default(""),
  version: z.number().int().min(0),
  writer: z.string().max(60),
  turn: z.number().int().min(0),
  entries: z.array(z.tuple([z.string().max(NAME), z.string().max(VALUE)])).max(FIELDS),
  /** Names of the fields that changed since the window's last keep: the entries are theirs alone. Absent: all are there. */
  changed: z.array(z.string().max(NAME)).max(FIELDS).optional(),
  settles: z.string().max(60),
  /** `look`: only asks whether a newer content is on the server. */
  act: z.enum(["keep", "look"]),
});

/** A form as a page sends it while somebody types. */
export type ParsedKeepRequest = z.infer<typeof request>;

/** Reads what a page sent, as text; null: it is no such thing. Nothing is coerced: a number that is a text is refused. */
export function parseKeepRequest(text: string): ParsedKeepRequest | null {
  try {
    const parsed = request.safeParse(JSON.parse(text));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
