import { redirect } from "next/navigation";
import type { Words } from "@/lib/words/catalogue";
import { type DiskFailure, diskFailureOf } from "./disk-failure";
import { ownPath } from "./own-path";
import { refusalPage } from "./refusal-page";

/** What a status says of a disk that took nothing: no room (507), or not as it is now (503). */
export const DISK_STATUS = { full: 507, busy: 503, "read-only": 503 } as const satisfies Record<DiskFailure, number>;

/**
 * Does what a press asks for; where the disk takes nothing, because it is full or closed for writing or another program writes, it leads to a
 * page that says so and leads back. Nothing was saved then: whatever was written was undone.
 *
 * @param back the page on which it was pressed, or what was typed stands
 */
export async function whenDiskFails<T>(back: string, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const failure = diskFailureOf(error);
    if (failure === null) throw error;
    return redirect(`/not-saved?${new URLSearchParams({ why: failure, back: ownPath(back) })}`);
  }
}

/** Does what is worth no word when the disk takes nothing of it. */
export function orNothing(work: () => void): void {
  try {
    work();
  } catch (error) {
    if (diskFailureOf(error) === null) throw error;
  }
}

/** As `whenDiskFails` for what answers a request itself: a whole page with the status. */
export async function answerDiskFailure(words: Words, work: () => Promise<Response>): Promise<Response> {
  try {
    return await work();
  } catch (error) {
    const failure = diskFailureOf(error);
    if (failure === null) throw error;
    const page = refusalPage(words, {
      title: words.say("not-saved.title"),
      happened: words.say(`not-saved.${failure}`),
      next: words.say("not-saved.again"),
    });
    return new Response(page, {
      status: DISK_STATUS[failure],
      headers: { "content-type": "text/html; charset=utf-8" },
    });
  }
}
