import type { ServerResponse } from "node:http";

/** Calls back whoever waits for a part of an answer that is held, as if it were written; `args` as `write` and `end` take them. */
export function callBack(args: readonly unknown[]): void {
  const done = args.find((each) => typeof each === "function") as (() => void) | undefined;
  if (done) process.nextTick(done);
}

/** Sets the headers that are handed to `writeHead` behind the status, so that they are there when the answer is written. */
export function setHeadersOf(response: ServerResponse, more: readonly unknown[]): void {
  const headers = more.find((each) => typeof each === "object" && each !== null && !Array.isArray(each));
  for (const [name, value] of Object.entries((headers ?? {}) as Record<string, string>))
    response.setHeader(name, value);
}
