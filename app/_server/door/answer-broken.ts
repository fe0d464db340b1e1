import type { Duplex } from "node:stream";
import { wordsFor } from "@/lib/words/catalogue";
import { beginAnswering, referenceHere } from "./answering";
import { logRefusal } from "./refusal-log";
import { sayStatus } from "./say-status";
import { BARE_POLICY, STANDING_HEADERS } from "./security-headers";

/** What Node’s reader of requests calls a request that it gives up on; anything else is garbled. */
const STATUS: Readonly<Record<string, number>> = {
  HPE_HEADER_OVERFLOW: 431,
  HPE_CHUNK_EXTENSIONS_OVERFLOW: 413,
  ERR_HTTP_REQUEST_TIMEOUT: 408,
};

/** A socket as Node keeps it: whether an answer has begun on it. */
interface Answered {
  readonly _httpMessage?: { readonly headersSent: boolean } | null;
}

/**
 * Answers what is no request: headers over the limit, one that came too slowly, or garbled. No page is asked, so the words
 * and the headers are put together here. For a server’s `clientError`.
 */
export function answerBroken(error: NodeJS.ErrnoException, socket: Duplex): void {
  const begun = (socket as Duplex & Answered)._httpMessage?.headersSent === true;
  if (!socket.writable || begun || error.code === "ECONNRESET") {
    socket.destroy();
    return;
  }
  const status = STATUS[error.code ?? ""] ?? 400;
  const answering = beginAnswering();
  const body = Buffer.from(sayStatus(wordsFor("en"), status));
  const headers = {
    ...STANDING_HEADERS,
    "Content-Security-Policy": BARE_POLICY,
    "Content-Type": "text/html; charset=utf-8",
    "Content-Length": String(body.length),
    Connection: "close",
  };
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}`);
  logRefusal({ reference: referenceHere(answering), status, why: "unread", method: "?", address: "?" });
  socket.end(Buffer.concat([Buffer.from([`HTTP/1.1 ${status} Refused`, ...lines, "", ""].join("\r\n")), body]));
}
