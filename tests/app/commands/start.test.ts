import { spawnSync } from "node:child_process";
import { createServer } from "node:net";
import path from "node:path";
import { describe, expect, it } from "vitest";

function start(port: string) {
  const env = { ...process.env, PORT: port, PROOFBAND_DATA: path.join("none", "such") };
  const entry = path.join("app", "_commands", "start.mjs");
  const { status, stderr } = spawnSync(process.execPath, [entry], { env, encoding: "utf8" });
  return { status, said: stderr };
}

describe("a start that can't be", () => {
  it("says that a port is no port", () => {
    for (const port of ["0", "99999", "80x", "3.5"]) {
      expect(start(port)).toMatchObject({ status: 1, said: expect.stringContaining("a whole number from 1 to 65535") });
    }
  });

  it("says that the port is in use, and how another one is chosen", async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) => {
      other.listen(0, "127.0.0.1", () => {
        const address = other.address();
        resolve(typeof address === "object" && address ? address.port : 0);
      });
    });
    const { status, said } = start(String(port));
    other.close();
    expect(status).toBe(1);
    expect(said).toContain(`Port ${port} is in use`);
    expect(said).toMatch(/PORT=\d+ npm start/);
  });
});
