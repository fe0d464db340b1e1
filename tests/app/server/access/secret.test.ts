import { execFile } from "node:child_process";
import { readdirSync, statSync, truncateSync, writeFileSync } from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { installationSecret } from "@/app/_server/access/secret";
import { builtScript } from "../../../built-script";
import { dataFolderForTests } from "./data-folder";

const folder = dataFolderForTests();
beforeEach(folder.make);
afterEach(folder.remove);

const run = promisify(execFile);

describe("the installation's secret", () => {
  it("is 256 random bits, made once, for its owner's eyes alone", () => {
    const secret = installationSecret();
    expect(Buffer.from(secret, "base64url")).toHaveLength(32);
    expect(installationSecret()).toBe(secret);
    expect(statSync(folder.file("secret")).mode & 0o777).toBe(0o600);
    expect(readdirSync(folder.file(""))).toEqual(["secret"]);
  });

  it("is another for another data folder", () => {
    const first = installationSecret();
    folder.remove();
    folder.make();
    expect(installationSecret()).not.toBe(first);
  });

  it("is one for four processes that start at once, and nothing else is left lying", async () => {
    const script = path.join(import.meta.dirname, "secret-process.ts");
    const started = Array.from({ length: 4 }, () => run(process.execPath, [builtScript(script)]));
    const secrets = (await Promise.all(started)).map(({ stdout }) => stdout);
    expect(new Set([...secrets, installationSecret()]).size).toBe(1);
    expect(secrets[0]).toMatch(/^[\w-]{43}$/);
    expect(readdirSync(folder.file(""))).toEqual(["secret"]);
  });

  it("that was cut short is refused: it could be guessed", () => {
    writeFileSync(folder.file("secret"), "");
    expect(() => installationSecret()).toThrow("cut short: 0");
    writeFileSync(folder.file("secret"), `${"A".repeat(43)}\n`);
    truncateSync(folder.file("secret"), 20);
    expect(() => installationSecret()).toThrow("cut short: 20");
  });
});
