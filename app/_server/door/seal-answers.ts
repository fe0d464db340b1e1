import diagnostics from "node:diagnostics_channel";
import type { IncomingMessage, ServerResponse } from "node:http";
import type { Socket } from "node:net";
import { answerBroken } from "./answer-broken";
import { beginAnswering } from "./answering";
import { limitBody } from "./limit-body";
import { putIntoWords } from "./put-into-words";
import { BARE_POLICY, standingHeaders, transportHeaders } from "./security-headers";
import { sendReadFirst } from "./send-read-first";

const REQUEST_STARTED = "http.server.request.start";
const CONNECTED = "net.server.socket";

const known = new WeakSet<object>();

function seal(message: unknown): void {
  const { request, response } = message as { readonly request: IncomingMessage; readonly response: ServerResponse };
  const standing = { ...standingHeaders(request.url ?? ""), ...transportHeaders(request.headers.host) };
  for (const [name, value] of Object.entries(standing)) response.setHeader(name, value);
  response.setHeader("Content-Security-Policy", BARE_POLICY);
  // The proxy can't even be asked about this method; as its like, it is refused in words.
  if (request.method === "TRACE") request.method = "OPTIONS";
  sendReadFirst(request, response);
  putIntoWords(request, response, beginAnswering());
  if (request.method !== "GET" && request.method !== "HEAD") limitBody(request, response);
}

// What can't be read as a request starts none: the server itself is asked to tell of it, at its first connection.
function listenToBroken(message: unknown): void {
  const { server } = (message as { readonly socket: Socket & { readonly server?: NodeJS.EventEmitter } }).socket;
  if (!server || known.has(server)) return;
  known.add(server);
  server.on("clientError", answerBroken);
}

/**
 * Puts the standing headers on every answer before anything looks at the request, so that they are also on what is
 * answered ahead of the proxy: a redirect to a tidier address, a failure of the server itself. What says nothing there is put
 * into words, and every refusal gets its line in the log.
 */
export function sealAnswers(): void {
  diagnostics.subscribe(REQUEST_STARTED, seal);
  diagnostics.subscribe(CONNECTED, listenToBroken);
}
