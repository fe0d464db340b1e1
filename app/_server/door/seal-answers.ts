import diagnostics from "node:diagnostics_channel";
import type { IncomingMessage, ServerResponse } from "node:http";
import { BARE_POLICY, STANDING_HEADERS } from "./security-headers";

const REQUEST_STARTED = "http.server.request.start";

function seal(message: unknown): void {
  const { request, response } = message as { readonly request: IncomingMessage; readonly response: ServerResponse };
  for (const [name, value] of Object.entries(STANDING_HEADERS)) response.setHeader(name, value);
  response.setHeader("Content-Security-Policy", BARE_POLICY);
  // The proxy can't even be asked about this method; as its like, it is refused in words.
  if (request.method === "TRACE") request.method = "OPTIONS";
}

/**
 * Puts the standing headers on every answer before anything looks at the request, so that they are also on what is
 * answered ahead of the proxy: a redirect to a tidier address, a failure of the server itself.
 */
export function sealAnswers(): void {
  diagnostics.subscribe(REQUEST_STARTED, seal);
}
