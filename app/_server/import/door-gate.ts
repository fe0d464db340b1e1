import type { Words } from "@/lib/words/catalogue";
import { readClock } from "../clock";
import { isLocalHost } from "../door/origin";
import { admitKey, type KeyHolder } from "./access-keys";
import { refuseAtDoor } from "./door-answer";

/** Wrong keys that are answered one by one in a minute; a key can't be guessed, but a program gone wrong is slowed. */
const WRONG_A_MINUTE = 20;
const MINUTE_MS = 60_000;

const KEY = Symbol.for("proofband.wrong-keys");
const shared = globalThis as { [KEY]?: { from: number; count: number } };

/** Seconds to wait after one wrong key more; 0: none. */
function secondsToWait(): number {
  const now = readClock().getTime();
  shared[KEY] ??= { from: now, count: 0 };
  const wrong = shared[KEY];
  if (now - wrong.from >= MINUTE_MS) Object.assign(wrong, { from: now, count: 0 });
  wrong.count += 1;
  return wrong.count > WRONG_A_MINUTE ? Math.max(1, Math.ceil((wrong.from + MINUTE_MS - now) / 1000)) : 0;
}

/** Who comes with this request's key, or the refusal. Until there are people to log in, only this machine is answered. */
export async function admitAtDoor(words: Words, request: Request): Promise<KeyHolder | Response> {
  const address = `http://127.0.0.1:${process.env.PORT || "3000"}`;
  if (!isLocalHost(request.headers.get("host"), process.env.PORT || "3000"))
    return refuseAtDoor(words, "foreign", { address });
  const given = /^Bearer +([^\s]+)$/i.exec(request.headers.get("authorization") ?? "")?.[1];
  if (given === undefined) return refuseAtDoor(words, "no-token");
  // A key in force is never slowed by others' wrong ones.
  const holder = await admitKey(given);
  if (holder) return holder;
  const seconds = secondsToWait();
  return seconds > 0 ? refuseAtDoor(words, "slow-down", { seconds }) : refuseAtDoor(words, "bad-token");
}
