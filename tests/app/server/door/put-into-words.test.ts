import http from "node:http";
import net, { type AddressInfo } from "node:net";
import { expect, it } from "vitest";
import { afterAnswer, beginAnswering } from "@/app/_server/door/answering";
import { putIntoWords } from "@/app/_server/door/put-into-words";

const GET = "GET / HTTP/1.1\r\nHost: x\r\n\r\n";

/** A server that answers only what is asked for by `?now`, and tells how many requests began and are over. */
async function startServer() {
  const count = { begun: 0, over: 0, listeners: 0 };
  const server = http.createServer((request, response) => {
    putIntoWords(request, response, beginAnswering());
    count.begun += 1;
    afterAnswer(() => {
      count.over += 1;
      count.listeners = request.socket.listenerCount("close");
    });
    if (request.url === "/?now") response.end("answered");
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const socket = net.connect((server.address() as AddressInfo).port, "127.0.0.1");
  socket.on("error", () => undefined).resume();
  return { server, socket, count };
}

it("of requests sent at once over a line that breaks, each is over, also those that wait behind the first", async () => {
  const { server, socket, count } = await startServer();
  socket.write(GET.repeat(15));
  const warned: string[] = [];
  const hear = ({ name }: Error) => warned.push(name);
  process.on("warning", hear);
  await expect.poll(() => count.begun).toBe(15);
  socket.destroy();
  await expect.poll(() => count.over).toBe(15);
  expect(warned).toEqual([]);
  process.off("warning", hear);
  server.close();
});

it("a line that stays open holds nothing of what was answered over it", async () => {
  const { server, socket, count } = await startServer();
  const heard: number[] = [];
  for (let n = 1; n <= 15; n++) {
    socket.write(GET.replace("/ ", "/?now "));
    await expect.poll(() => count.over).toBe(n);
    heard.push(count.listeners);
  }
  expect(new Set(heard).size).toBe(1);
  socket.destroy();
  server.close();
});
