import http from "node:http";
import net, { type AddressInfo } from "node:net";
import { afterAll, beforeAll, expect, it } from "vitest";
import { LINGER_MS, limitBody } from "@/app/_server/door/limit-body";
import { bodyLimit } from "@/app/_server/door/upload-limit";

const POST = "POST /record HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\n";
const BIT = 64 * 1024;
const CHUNK = `${BIT.toString(16)}\r\n${"x".repeat(BIT)}\r\n`;

let server: http.Server;
/** What whoever reads the bodies was told. */
const told: string[] = [];
beforeAll(async () => {
  server = http.createServer((request, response) => {
    limitBody(request, response);
    if (request.headers["x-first"]) response.writeHead(200).write("answered first");
    for (const event of ["end", "aborted"]) request.on(event, () => told.push(event));
    request.on("error", () => undefined).resume();
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
});
afterAll(() => void server.close());

function connect() {
  const socket = net.connect((server.address() as AddressInfo).port, "127.0.0.1");
  const heard = { text: "", isClosed: false };
  socket.on("data", (chunk) => {
    heard.text += chunk.toString("utf8");
  });
  socket.on("error", () => undefined);
  socket.on("close", () => {
    heard.isClosed = true;
  });
  return { socket, heard };
}

/** A body over the limit that doesn't state its length, as far as the answer. */
async function sendTooMuch() {
  const line = connect();
  line.socket.write(POST);
  for (let size = 0; size <= bodyLimit("/record"); size += BIT) line.socket.write(CHUNK);
  await expect.poll(() => line.heard.text).toMatch(/^HTTP\/1\.1 413 [\s\S]*<\/html>/);
  return line;
}

it("what is still on its way after the refusal runs past unread, and its reader takes it for no whole body", async () => {
  told.length = 0;
  const { socket, heard } = await sendTooMuch();
  // Each on its way before the next, well within the time that it may run past.
  for (let n = 0; n < 10; n++) await new Promise((resolve) => socket.write(CHUNK, resolve));
  expect([heard.isClosed, told]).toEqual([false, []]);
  socket.write("0\r\n\r\n");
  await expect.poll(() => heard.isClosed).toBe(true);
  expect(told).toEqual(["aborted"]);
});

it("a body that is over the limit by its last bit alone is refused in words too", async () => {
  const { socket, heard } = connect();
  const most = "x".repeat(bodyLimit("/record") + 1);
  socket.write(`${POST}${most.length.toString(16)}\r\n${most}\r\n0\r\n\r\n`);
  await expect.poll(() => heard.isClosed).toBe(true);
  expect(heard.text).toMatch(/^HTTP\/1\.1 413 [\s\S]*<\/html>/);
});

it(`whoever doesn't end is cut off after ${LINGER_MS / 1000} s`, async () => {
  const { socket, heard } = await sendTooMuch();
  const from = performance.now();
  const more = setInterval(() => socket.write(CHUNK), 50);
  await expect.poll(() => heard.isClosed, { timeout: LINGER_MS * 3 }).toBe(true);
  clearInterval(more);
  expect(performance.now() - from).toBeGreaterThan(LINGER_MS * 0.8);
});

it("also where something has answered before, whoever doesn't end is cut off", async () => {
  const { socket, heard } = connect();
  socket.write(POST.replace("Host: x", "Host: x\r\nX-First: yes"));
  await expect.poll(() => heard.text).toContain("answered first");
  for (let size = 0; size <= bodyLimit("/record"); size += BIT) socket.write(CHUNK);
  await expect.poll(() => heard.isClosed, { timeout: LINGER_MS * 3 }).toBe(true);
  expect(heard.text).not.toContain("413");
});
