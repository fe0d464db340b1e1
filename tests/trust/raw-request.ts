import { readFileSync } from "node:fs";
import http from "node:http";
import { served } from "../e2e/served";

export interface Answer {
  readonly status: number;
  readonly headers: http.IncomingHttpHeaders;
  readonly body: string;
}

/** The cookies of whoever has entered the demo. */
function signedIn(): string {
  const { cookies } = JSON.parse(readFileSync(served.signedIn, "utf8")) as {
    readonly cookies: readonly { readonly name: string; readonly value: string }[];
  };
  return cookies.map(({ name, value }) => `${name}=${value}`).join("; ");
}

/** Sends exactly these headers: a browser, and fetch, would not let Host or Origin be forged. An empty cookie: of nobody; none: of whoever has entered the demo. */
export function sendRaw(
  method: string,
  path: string,
  headers: Record<string, string> = {},
  body = "",
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = { cookie: signedIn(), ...headers };
    const options = { host: "127.0.0.1", port: served.port, method, path, headers: sent, agent: false };
    const request = http.request(options, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => {
        const { statusCode: status = 0, headers: received } = response;
        resolve({ status, headers: received, body: Buffer.concat(parts).toString("utf8") });
      });
    });
    request.on("error", reject);
    request.end(body);
  });
}
