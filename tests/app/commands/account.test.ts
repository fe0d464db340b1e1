import { spawnSync } from "node:child_process";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { loadJoin } from "@/app/_server/people/load-join";
import { wordsFor } from "@/lib/words/catalogue";
import { builtScript } from "../../built-script";
import { FRESH, join } from "../server/inviting";
import { PASSWORD, type PeopleAcademy, startPeopleAcademy } from "../server/people-academy";

const ROOT = path.join(import.meta.dirname, "../../..");

let academy: PeopleAcademy;
beforeEach(async () => {
  academy = await startPeopleAcademy();
});
afterEach(() => academy.remove());

// The academy stays open meanwhile, as while it is served.
function run(...args: readonly string[]) {
  const done = spawnSync(process.execPath, [builtScript("app/_commands/account.ts"), ...args], {
    cwd: ROOT,
    encoding: "utf8",
    env: { ...process.env, PORT: "3322" },
  });
  return { status: done.status, said: done.stdout + done.stderr };
}

describe("npm run account", () => {
  it("beside an open academy prints a link for a new password, and ends the log-ins of that account", async () => {
    const sent = await academy.signIn("ada@range.example", PASSWORD);
    const { status, said } = run("--email", "Ada@Range.example");
    expect(status).toBe(0);
    const token = /http:\/\/127\.0\.0\.1:3322\/join\/([\w-]{43})/.exec(said)?.[1] ?? "";
    expect(await academy.logIn(sent)).toBeNull();
    expect((await loadJoin(wordsFor("en"), token))?.heading).toBe("A new password for Ada");
    expect((await join(token, FRESH)).status).toBe(303);
    expect(await academy.logIn(await academy.signIn("ada@range.example", FRESH))).not.toBeNull();
  }, 60_000);

  it("with an unknown address or word changes nothing and says so", async () => {
    const sent = await academy.signIn("ada@range.example", PASSWORD);
    const [nobody, word] = [run("--email", "no@range.example"), run("--mail", "x")];
    expect([nobody.status, word.status]).toEqual([2, 2]);
    expect(nobody.said).toContain("Nothing was changed");
    expect(await academy.logIn(sent)).not.toBeNull();
    expect(academy.db.sqlite.prepare("SELECT count(*) FROM invitation").pluck().get()).toBe(0);
  }, 60_000);
});
