import type { Words } from "@/lib/words/catalogue";
import { noteWhy, referenceHere } from "../door/answering";

/** Refusals of the door, each with its status; the words are `door.<name>.problem` and `door.<name>.do`. */
const STATUS = {
  "no-token": 401,
  "bad-token": 401,
  foreign: 403,
  absent: 404,
  method: 405,
  "too-big": 413,
  "not-a-table": 415,
  empty: 422,
  half: 422,
  "nothing-ready": 422,
  "unknown-students": 409,
  "slow-down": 429,
  failed: 503,
  "disk-busy": 503,
  "disk-read-only": 503,
  "disk-full": 507,
} as const;

export type DoorRefusal = keyof typeof STATUS;

/** A refusal of the door: what happened and what to do, as data, and in one sentence for whoever reads it raw. */
export function refuseAtDoor(
  words: Words,
  name: DoorRefusal,
  args: Readonly<Record<string, string | number>> = {},
  also: Readonly<Record<string, unknown>> = {},
): Response {
  const headers: Record<string, string> = {};
  if (name === "method") headers.allow = "POST";
  if (name === "slow-down") headers["retry-after"] = String(args.seconds ?? 60);
  if (STATUS[name] === 401) headers["www-authenticate"] = "Bearer";
  noteWhy(name);
  const body = {
    problem: words.say(`door.${name}.problem`, args),
    do: words.say(`door.${name}.do`, args),
    reference: referenceHere(),
    ...also,
  };
  return Response.json(body, { status: STATUS[name], headers });
}
