import http from "node:http";
import https from "node:https";
import type { AddressInfo } from "node:net";
import { selfSigned } from "./self-signed";

/** A server in front that ends TLS and hands on what it is sent, with what such servers add. */
export interface TlsProxy {
  readonly origin: string;
  /** Whom it hands on to, once that one is there. */
  behind(port: number): void;
  stop(): void;
}

export async function startTlsProxy(name: string): Promise<TlsProxy> {
  let target = 0;
  const server = https.createServer(selfSigned(name), (request, response) => {
    const told = { "x-forwarded-for": "203.0.113.9", "x-forwarded-proto": "https", "x-forwarded-host": name };
    // What the sender says of being forwarded is handed on as it came: a careless proxy does so.
    const headers = { ...told, ...request.headers };
    const { method, url } = request;
    const onward = http.request({ host: "127.0.0.1", port: target, method, path: url, headers }, (answer) => {
      response.writeHead(answer.statusCode ?? 502, answer.rawHeaders);
      answer.pipe(response);
    });
    onward.on("error", () => response.destroy());
    request.pipe(onward);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    origin: `https://${name}:${(server.address() as AddressInfo).port}`,
    behind(port) {
      target = port;
    },
    stop() {
      server.closeAllConnections();
      server.close();
    },
  };
}

/** Asks through TLS with exactly these headers. */
export function askTls(
  origin: string,
  method: string,
  path: string,
  headers: Record<string, string> = {},
  body = "",
): Promise<{ readonly status: number; readonly headers: http.IncomingHttpHeaders; readonly body: string }> {
  return new Promise((resolve, reject) => {
    const { host, hostname, port } = new URL(origin);
    const sent = { Host: host, ...headers };
    const options = {
      host: "127.0.0.1",
      servername: hostname,
      port,
      method,
      path,
      headers: sent,
      rejectUnauthorized: false,
    };
    const request = https.request({ ...options, agent: false }, (response) => {
      let text = "";
      response.on("data", (part: Buffer) => {
        text += part.toString("utf8");
      });
      response.on("end", () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }));
    });
    request.on("error", reject);
    request.end(body);
  });
}
