import http from "node:http";
import { served } from "../e2e/served";

export interface Answer {
  readonly status: number;
  readonly headers: http.IncomingHttpHeaders;
  readonly body: string;
}

/** Sends exactly these headers: a browser, and fetch, would not let Host or Origin be forged. */
export function sendRaw(
  method: string,
  path: string,
  headers: Record<string, string> = {},
  body = "",
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const options = { host: "127.0.0.1", port: served.port, method, path, headers, agent: false };
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
