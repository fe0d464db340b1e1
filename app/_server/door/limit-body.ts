import type { IncomingMessage, ServerResponse } from "node:http";
import { noteWhy } from "./answering";
import { bodyLimit, refuseTooBig } from "./upload-limit";
import { wordsAsked } from "./words-asked";

/** So long, in milliseconds, the rest of a body is let run past unread: whoever is cut off at once never reads why. */
export const LINGER_MS = 2000;

/**
 * Reads no more of a body than its address takes, also of one that doesn't state its length: it is refused there, in words, and
 * what comes after is thrown away.
 */
export function limitBody(request: IncomingMessage, response: ServerResponse): void {
  const pathname = (request.url ?? "").split("?")[0] ?? "";
  const limit = bodyLimit(pathname);
  const push = request.push.bind(request);
  let size = 0;
  request.push = (chunk: Buffer | string | null, encoding?: BufferEncoding): boolean => {
    size += chunk === null ? 0 : chunk.length;
    if (size <= limit) return push(chunk, encoding);
    // Who reads it is left waiting and then cut off: half a body that ended would be taken for a whole one.
    if (chunk === null) cutOff(request, response);
    else if (size - chunk.length <= limit) void refuse(request, response, pathname);
    return true;
  };
}

/** All has run past: the line ends once the refusal is on its way. */
function cutOff(request: IncomingMessage, response: ServerResponse): void {
  if (response.writableFinished) request.destroy();
  else response.once("finish", () => request.destroy());
}

async function refuse(request: IncomingMessage, response: ServerResponse, pathname: string): Promise<void> {
  noteWhy("too-big");
  // Also where something has answered before: whoever sends on without end is cut off.
  setTimeout(() => request.destroy(), LINGER_MS).unref();
  const refusal = refuseTooBig(wordsAsked(request), pathname);
  const body = await refusal.text();
  if (response.headersSent) return;
  response.statusCode = refusal.status;
  response.setHeader("content-type", refusal.headers.get("content-type") ?? "");
  // Said to be the last answer of its line, it would take the line down at once.
  response.end(body);
}
