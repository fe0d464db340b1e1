import { readFileSync } from "node:fs";
import http from "node:http";
import { served } from "../e2e/served";

export interface Answer {
  readonly status: number;
  readonly headers: http.IncomingHttpHeaders;
  readonly body: string;
  /** As it came, for what is no text. */
  readonly bytes: Uint8Array;
}

/** The cookies of whoever has entered the demo. */
export function signedIn(): string {
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
  return sendOver(served.port, { method, path, headers: { cookie: signedIn(), ...headers }, body });
}

/** A request as it is to be sent, to a server on this machine. */
interface Sent {
  readonly method: string;
  readonly path: string;
  readonly headers: Record<string, string>;
  readonly body: string | Buffer;
}

/** The same to whichever server listens at a port. */
export function sendOver(port: number, { body, ...sent }: Sent): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = http.request({ host: "127.0.0.1", port, ...sent, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("error", reject);
      response.on("end", () => {
        const { statusCode: status = 0, headers: received } = response;
        const bytes = Buffer.concat(parts);
        resolve({ status, headers: received, body: bytes.toString("utf8"), bytes });
      });
    });
    request.on("error", reject);
    request.end(body);
  });
}
