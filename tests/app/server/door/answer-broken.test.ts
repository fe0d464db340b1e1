import http from "node:http";
import net, { type AddressInfo } from "node:net";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { answerBroken } from "@/app/_server/door/answer-broken";

// F1, J7: what Node's reader of requests gives up on, at a server with short times where it is about them.

/** One whose times run out soon, and one whose times never do: beside other work a whole request comes slowly too. */
const servers: http.Server[] = [];
const SLOW = { headersTimeout: 150, requestTimeout: 300, connectionsCheckingInterval: 40 };
const written: string[] = [];
beforeAll(async () => {
  vi.spyOn(process.stderr, "write").mockImplementation((text) => {
    written.push(String(text));
    return true;
  });
  for (const times of [SLOW, {}]) {
    const server = http.createServer(times, (request, response) => {
      request.on("end", () => response.end("taken"));
      request.resume();
    });
    server.on("clientError", answerBroken);
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    servers.push(server);
  }
});
afterAll(() => {
  vi.restoreAllMocks();
  for (const server of servers) server.close();
});

function say(server: http.Server | undefined, pieces: readonly string[]): Promise<string> {
  if (!server) throw new Error("no server");
  return new Promise((resolve) => {
    const socket = net.connect((server.address() as AddressInfo).port, "127.0.0.1");
    let heard = "";
    socket.on("data", (chunk) => {
      heard += chunk.toString("utf8");
    });
    socket.on("error", () => undefined);
    socket.once("close", () => resolve(heard));
    for (const piece of pieces) socket.write(piece);
  });
}

const HEAD = "POST / HTTP/1.1\r\nHost: x\r\n";

it.each([
  ["headers that come too slowly", 408, /did not arrive in time/, ["POST / HTTP/1.1\r\nHos"]],
  ["a body that comes too slowly", 408, /did not arrive in time/, [`${HEAD}Content-Length: 100\r\n\r\n`, "a"]],
  ["headers over the limit", 431, /over 16 kB/, [`${HEAD}X: ${"x".repeat(20_000)}\r\n\r\n`]],
  ["an address over the limit", 431, /over 16 kB/, [`GET /${"x".repeat(20_000)} HTTP/1.1\r\nHost: x\r\n\r\n`]],
  ["no request", 400, /could not be read/, ["what?\r\n\r\n"]],
  ["two lengths", 400, /could not be read/, [`${HEAD}Content-Length: 1\r\nContent-Length: 2\r\n\r\nab`]],
  ["a length and none", 400, /could not be read/, [`${HEAD}Content-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n`]],
  ["a chunk without a size", 400, /could not be read/, [`${HEAD}Transfer-Encoding: chunked\r\n\r\nzz\r\n`]],
])("%s: %i in words, sealed, with a reference that the log has", async (_what, status, words, pieces) => {
  const heard = await say(servers[status === 408 ? 0 : 1], pieces);
  expect(heard).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `));
  expect(heard).toMatch(words);
  expect(heard).toMatch(/Nothing was|nothing was/);
  for (const header of [
    "Content-Security-Policy",
    "X-Content-Type-Options: nosniff",
    "Referrer-Policy: no-referrer",
    "Cache-Control: no-store",
  ])
    expect(heard).toContain(header);
  const [body = ""] = heard.split("\r\n\r\n").slice(1);
  expect(heard).toContain(`Content-Length: ${Buffer.byteLength(body)}`);
  const reference = /[2-9B-Z]{4}-[2-9B-Z]{4}/.exec(body)?.[0] ?? "none";
  expect(written.filter((line) => line.includes(`refused ${reference} ${status} unread`))).toHaveLength(1);
  expect(heard).not.toMatch(/node_modules| at \w+ \(/);
});
