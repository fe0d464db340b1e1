import { createServer, type IncomingHttpHeaders, request, type Server } from "node:http";
import type { AddressInfo } from "node:net";

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
  /** Milliseconds from asking to the whole answer. */
  readonly took: number;
}

function ask(address: string, path: string, headers: IncomingHttpHeaders): Promise<Answer> {
  const from = performance.now();
  return new Promise((resolve, reject) => {
    const sent = request(new URL(path, address), { headers: { ...headers, host: new URL(address).host } }, (got) => {
      const parts: Buffer[] = [];
      got.on("data", (part: Buffer) => parts.push(part));
      got.on("end", () => {
        const { "transfer-encoding": _, connection: __, ...kept } = got.headers;
        const body = Buffer.concat(parts);
        resolve({ status: got.statusCode ?? 0, headers: kept, body, took: performance.now() - from });
      });
    });
    sent.on("error", reject);
    sent.end();
  });
}

/** Times that each address is asked before its answer is kept: a server's first ones are its slowest. */
const TIMES = 9;

/**
 * A stand-in for the server of `address` at a port of its own: what is asked for is got from the server beforehand and given
 * again, byte for byte, after as long as the server took (the median of nine times). A phone and its server share no
 * processor; here they would, and the server, four times slowed with the phone, would be what is measured.
 */
export async function answerAgain(address: string): Promise<{ readonly address: string; readonly close: () => void }> {
  const kept = new Map<string, Answer>();
  let before: Promise<unknown> = Promise.resolve();
  const server: Server = createServer((asked, answer) => {
    const path = asked.url ?? "/";
    const give = ({ status, headers, body, took }: Answer, wait: boolean) =>
      setTimeout(() => answer.writeHead(status, headers).end(body), wait ? took : 0);
    const known = kept.get(path);
    if (known !== undefined) return void give(known, true);
    const learn = async () => {
      const answers: Answer[] = [];
      for (let time = 0; time < TIMES; time++) answers.push(await ask(address, path, asked.headers));
      const [last] = answers.slice(-1);
      const took = answers.map((each) => each.took).sort((a, b) => a - b)[Math.floor(TIMES / 2)];
      if (last === undefined || took === undefined) throw new Error(`${path} was not answered`);
      kept.set(path, { ...last, took });
      give(last, false);
    };
    // One after another, so that none is asked for beside another.
    before = before.then(learn).catch((error: unknown) => answer.destroy(error as Error));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}`, close: () => server.close() };
}
