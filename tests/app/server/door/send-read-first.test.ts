import http from "node:http";
import type { AddressInfo } from "node:net";
import { gunzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { sendReadFirst } from "@/app/_server/door/send-read-first";

const PAGE = `<html><head><title>é</title></head><body>${"read ".repeat(2000)}</body></html>`;
const told: (string | undefined)[] = [];
let written = 0;

const server = http.createServer((request, response) => {
  sendReadFirst(request, response);
  told.push(request.headers["accept-encoding"] as string | undefined);
  if (request.url?.includes("refused")) response.statusCode = 404;
  response.setHeader("content-type", request.url?.includes("data") ? "application/json" : "text/html; charset=utf-8");
  if (request.url?.includes("head")) response.writeHead(200, { "x-said": "1" });
  response.flushHeaders();
  const half = Buffer.from(PAGE).subarray(0, 20);
  response.write(half, () => {
    written++;
  });
  response.end(Buffer.from(PAGE).subarray(20));
});
beforeAll(() => new Promise<void>((resolve) => void server.listen(0, "127.0.0.1", resolve)));
afterAll(() => void server.close());

function ask(path: string, headers: Record<string, string> = {}, method = "GET") {
  const { port } = server.address() as AddressInfo;
  return new Promise<{ status: number; headers: http.IncomingHttpHeaders; body: Buffer }>((resolve, reject) => {
    const sent = http.request({ port, path, method, headers }, (got) => {
      const parts: Buffer[] = [];
      got.on("data", (part) => parts.push(part));
      got.on("end", () => resolve({ status: got.statusCode ?? 0, headers: got.headers, body: Buffer.concat(parts) }));
    });
    sent.on("error", reject);
    sent.end();
  });
}

describe("a family's page", () => {
  it("is sent whole, pressed once, where the browser takes that", async () => {
    const { headers, body } = await ask("/family/abc?done=1", { "accept-encoding": "br, gzip" });
    expect(headers).toMatchObject({ "content-encoding": "gzip", vary: "Accept-Encoding" });
    expect(headers["content-length"]).toBe(String(body.length));
    expect(gunzipSync(body).toString()).toBe(PAGE);
    // What is behind presses nothing, or it could not be read here.
    expect(told.at(-1)).toBeUndefined();
    expect(written).toBeGreaterThan(0);
  });

  it("is sent plain where it doesn't, with the headers that were written at once", async () => {
    const { headers, body } = await ask("/family/head");
    expect(headers["content-encoding"]).toBeUndefined();
    expect(headers["x-said"]).toBe("1");
    expect(body.toString()).toBe(PAGE);
  });

  it.each([
    ["a refusal", "/family/refused", {}, "GET"],
    ["data", "/family/data", {}, "GET"],
    ["a link that is opened", "/family/open/token", {}, "GET"],
    ["a stream of the page's own scripts", "/family/abc", { rsc: "1" }, "GET"],
    ["what is sent", "/family/abc", {}, "POST"],
    ["any other page", "/students", {}, "GET"],
  ])("%s goes as it is", async (_what, path, headers, method) => {
    const { body, headers: got } = await ask(path, { ...headers, "accept-encoding": "gzip" }, method);
    expect(got["content-encoding"]).toBeUndefined();
    expect(got.vary).toBeUndefined();
    expect(body.toString()).toBe(PAGE);
  });
});
