import { randomUUID } from "node:crypto";
import net from "node:net";
import path from "node:path";
import { type Database, openDatabase } from "@/db/client";
import type { OtherServer } from "./other-server";
import { type Answer, signedIn } from "./raw-request";

// How requests are sent that are to be refused.

export const FORM = "application/x-www-form-urlencoded";
const STUDENT = "s31";

/** Headers as our own pages send them. */
export function ours(server: OtherServer, more: Record<string, string> = {}): Record<string, string> {
  const host = `127.0.0.1:${server.port}`;
  return { Host: host, Origin: `http://${host}`, cookie: signedIn(), ...more };
}

export const nobody = { cookie: "proofband-academy=demo" };

/** A body of parts as a browser sends a form with a file. */
export function upload(name: string, bytes: Buffer): { readonly type: string; readonly body: Buffer } {
  const boundary = "----proofband";
  const head = `--${boundary}\r\nContent-Disposition: form-data; name="file"; filename="${name}"\r\nContent-Type: text/csv\r\n\r\n`;
  return {
    type: `multipart/form-data; boundary=${boundary}`,
    body: Buffer.concat([Buffer.from(head), bytes, Buffer.from(`\r\n--${boundary}--\r\n`)]),
  };
}

export function sendFile(server: OtherServer, name: string, bytes: Buffer): Promise<Answer> {
  const { type, body } = upload(name, bytes);
  return server.send("POST", "/api/import", ours(server, { "Content-Type": type }), body);
}

/** A body without a stated length, written as fast as it is taken; what comes back once there is an answer. */
export function sendUnstated(server: OtherServer, address: string, headers: Record<string, string>, bytes: number) {
  return sendRawly(server, async (write) => {
    const lines = Object.entries({ ...headers, "Transfer-Encoding": "chunked" }).map(
      ([name, value]) => `${name}: ${value}`,
    );
    write(`POST ${address} HTTP/1.1\r\n${lines.join("\r\n")}\r\n\r\n`);
    const chunk = Buffer.alloc(64 * 1024, "a=b&");
    for (let sent = 0; sent < bytes; sent += chunk.length) {
      if (!write(`${chunk.length.toString(16)}\r\n`) || !write(chunk) || !write("\r\n")) return;
      if (sent % (1024 * 1024) === 0) await new Promise((resolve) => setTimeout(resolve, 2));
    }
    write("0\r\n\r\n");
  });
}

/** Whatever bytes are written to the server, and the answer read by hand. */
export function sendRawly(
  server: OtherServer,
  talk: (write: (bytes: string | Buffer) => boolean) => Promise<void> | void,
): Promise<Answer & { readonly sent: number }> {
  return new Promise((resolve, reject) => {
    const socket = net.connect(server.port, "127.0.0.1");
    const parts: Buffer[] = [];
    const finish = (): void => {
      const bytes = Buffer.concat(parts);
      const text = bytes.toString("utf8");
      const [head = "", ...rest] = text.split("\r\n\r\n");
      const [first = "", ...lines] = head.split("\r\n");
      const headers = Object.fromEntries(
        lines.map((line) => [line.split(": ", 1)[0]?.toLowerCase(), line.replace(/^[^:]*: /, "")]),
      );
      resolve({
        status: Number(first.split(" ")[1] ?? 0),
        headers,
        body: rest.join("\r\n\r\n"),
        bytes,
        sent: socket.bytesWritten,
      });
    };
    socket.setTimeout(15_000, () => socket.destroy(new Error("no answer")));
    socket.on("data", (part: Buffer) => parts.push(part));
    socket.once("close", finish);
    // Cut off while it still writes: what was answered before counts.
    socket.on("error", (error) => (parts.length > 0 ? undefined : reject(error)));
    void talk((bytes) => {
      if (socket.destroyed || socket.writableEnded) return false;
      socket.write(bytes);
      return true;
    });
  });
}

export function keep(server: OtherServer, body: object | string): Promise<Answer> {
  const headers = ours(server, { "Content-Type": "application/json" });
  return server.send("POST", "/api/drafts", headers, typeof body === "string" ? body : JSON.stringify(body));
}

export const draftOf = (more: object) => ({
  ...{ draft: randomUUID(), form: "session-form", studentId: STUDENT, version: 0, writer: "w", turn: 1 },
  ...{ entries: [], settles: "", act: "keep" },
  ...more,
});

function demoOf(server: OtherServer): Database {
  return openDatabase(path.join(server.data, "demo", "proofband.db"));
}

/** Does something while the server’s data are as `change` leaves them. */
export async function whileSo<T>(
  server: OtherServer,
  change: string,
  back: string,
  work: () => Promise<T>,
): Promise<T> {
  const db = demoOf(server);
  db.sqlite.exec(change);
  try {
    return await work();
  } finally {
    db.sqlite.exec(back);
    db.close();
  }
}

export const signInAs = (server: OtherServer, fields: Record<string, string>) =>
  server.send(
    "POST",
    "/api/sign-in",
    ours(server, { ...nobody, "Content-Type": FORM }),
    new URLSearchParams(fields).toString(),
  );
