import type { IncomingMessage, ServerResponse } from "node:http";
import type { Socket } from "node:net";
import { type Answering, endAnswering, referenceHere } from "./answering";
import { callBack, setHeadersOf } from "./held-answer";
import { logRefusal } from "./refusal-log";
import { sayStatus } from "./say-status";
import { wordsAsked } from "./words-asked";

const MOST_LISTENERS = 20;

/** Ours is every page that is refused with another status; the framework’s own failure says nothing without scripts. */
function saysNothing(status: number, type: string): boolean {
  if (status < 400) return false;
  return type === "" || type.startsWith("text/plain") || (status >= 500 && status !== 503 && status !== 507);
}

function typeOf(response: ServerResponse): string {
  return String(response.getHeader("content-type") ?? "").toLowerCase();
}

const lines = new WeakMap<Socket, Set<Answering>>();

/**
 * What is being answered over one line. Of several requests sent at once, those behind the first have no close of their own
 * when the line breaks: they are over with it. One listener for all, however many there are.
 */
function answersOver(socket: Socket): Set<Answering> {
  const found = lines.get(socket);
  if (found) return found;
  const begun = new Set<Answering>();
  lines.set(socket, begun);
  socket.once("close", () => {
    for (const each of begun) endAnswering(each);
  });
  return begun;
}

/**
 * Puts an answer that says nothing, as the framework gives it, into words of ours, with the reference that finds it in the log,
 * and writes a line for every refusal, whoever refused. Streams and data of the framework’s own scripts are left as they are.
 */
export function putIntoWords(request: IncomingMessage, response: ServerResponse, answering: Answering): void {
  const write = response.write.bind(response) as (...args: readonly unknown[]) => boolean;
  const end = response.end.bind(response) as (...args: readonly unknown[]) => ServerResponse;
  const writeHead = response.writeHead.bind(response) as (...args: readonly unknown[]) => ServerResponse;
  /** Null: not known yet. */
  let instead: boolean | null = null;
  let ended = false;
  const [method, address] = [request.method ?? "", request.url ?? ""];

  const isReplaced = (): boolean => {
    if (instead !== null) return instead;
    // A script of ours that asks for a page as a stream goes on by the stream alone.
    if (answering.status !== null && response.statusCode === 200 && request.headers.rsc === undefined)
      response.statusCode = answering.status;
    const type = typeOf(response);
    instead = saysNothing(response.statusCode, type) && !/x-component|json|image|svg/.test(type);
    return instead;
  };

  response.writeHead = ((status: number, ...more: unknown[]) => {
    response.statusCode = status;
    if (!ended) setHeadersOf(response, more);
    return isReplaced() && !ended ? response : writeHead(response.statusCode, ...(ended ? [] : more));
  }) as ServerResponse["writeHead"];
  response.write = ((...args: unknown[]) => {
    if (!isReplaced()) return write(...args);
    callBack(args);
    return true;
  }) as ServerResponse["write"];
  response.end = ((...args: unknown[]) => {
    if (ended || !isReplaced() || response.headersSent) return end(...args);
    ended = true;
    const body = Buffer.from(sayStatus(wordsAsked(request), response.statusCode));
    for (const name of ["content-encoding", "transfer-encoding", "etag", "trailer"]) response.removeHeader(name);
    response.setHeader("content-type", "text/html; charset=utf-8");
    response.setHeader("content-length", body.length);
    callBack(args);
    return method === "HEAD" ? end() : end(body);
  }) as ServerResponse["end"];
  // The framework's own page for what isn't there listens ten times to one answer, and Node warns of the eleventh.
  response.setMaxListeners(MOST_LISTENERS);
  response.once("finish", () => {
    const { statusCode: status } = response;
    if (status < 400) return;
    logRefusal({ reference: referenceHere(answering), status, why: answering.why, method, address });
  });
  const line = answersOver(request.socket).add(answering);
  response.once("close", () => {
    line.delete(answering);
    endAnswering(answering);
  });
}
