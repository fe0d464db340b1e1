import { createOTP } from "@better-auth/utils/otp";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { mustAddSecondStep } from "@/app/_server/access/second-step";
import { receiveCode, receiveSignIn } from "@/app/_server/access/sign-in-desk";
import { loadSecondStep } from "@/app/_server/people/load-second-step";
import { qrPicture } from "@/app/_server/people/qr-picture";
import { beginSecondStep, dropSecondStep, findBegun, proveSecondStep } from "@/app/_server/people/second-step-desk";
import { formOf } from "./first-student";
import { PASSWORD, type PeopleAcademy, sentTo, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
beforeEach(async () => {
  academy = await startPeopleAcademy();
});
afterEach(() => {
  vi.unstubAllEnvs();
  academy.remove();
});

/** What a code program shows now: of the secret as the program reads it, in base 32. */
async function codeNow(uri: string): Promise<string> {
  const secret = new URL(uri).searchParams.get("secret") ?? "";
  const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
  const bits = [...secret].map((sign) => letters.indexOf(sign).toString(2).padStart(5, "0")).join("");
  const bytes = (bits.match(/.{8}/g) ?? []).map((byte) => String.fromCharCode(Number.parseInt(byte, 2))).join("");
  return createOTP(bytes).totp();
}

function cookiesOf(made: Headers): Headers {
  const cookie = made
    .getSetCookie()
    .map((line) => line.split(";")[0])
    .join("; ");
  return sentTo({ cookie });
}

async function turnOn() {
  const sent = await academy.signIn("ada@range.example", PASSWORD);
  const viewer = academy.viewer(academy.ownerId);
  await beginSecondStep(viewer, sent, formOf({ password: PASSWORD }));
  const begun = findBegun(viewer);
  if (!begun) throw new Error("nothing was begun");
  const moved = await proveSecondStep(viewer, sent, formOf({ code: await codeNow(begun.uri) }));
  return { viewer, begun, moved, sent };
}

async function require(sent: Headers) {
  const logIn = await academy.logIn(sent);
  if (!logIn) throw new Error("not logged in");
  return logIn;
}

function post(path: string, body: Readonly<Record<string, string>>, cookie = ""): Request {
  const headers = sentTo({ cookie: `proofband-academy=own; ${cookie}` });
  return new Request(`http://127.0.0.1:3000${path}`, { method: "POST", headers, body: new URLSearchParams(body) });
}

describe("the second step", () => {
  it("is asked for from nobody until a code was right; a wrong password or code begins and proves nothing", async () => {
    const sent = await academy.signIn("ada@range.example", PASSWORD);
    const viewer = academy.viewer(academy.ownerId);
    const wrong = await beginSecondStep(viewer, sent, formOf({ password: "not this one" }));
    expect([wrong, findBegun(viewer)]).toEqual([{ kind: "refused", why: "wrong" }, null]);
    await beginSecondStep(viewer, sent, formOf({ password: PASSWORD }));
    const begun = findBegun(viewer);
    const right = await codeNow(begun?.uri ?? "");
    const other = String((Number(right) + 1) % 1_000_000).padStart(6, "0");
    expect((await proveSecondStep(viewer, sent, formOf({ code: other }))).outcome).toEqual({
      kind: "refused",
      why: "code",
    });
    expect((await require(sent)).hasSecondStep).toBe(false);
    const signedIn = await receiveSignIn(post("/api/sign-in", { email: "ada@range.example", password: PASSWORD }));
    expect(signedIn.headers.get("location")).toBe("/");
  });

  it("of somebody who has left is asked for no more: the refusal, the words and the cookies of a wrong password; nor does it bring them in", async () => {
    const { begun } = await turnOn();
    const enter = (email: string, password: string) =>
      receiveSignIn(post("/api/sign-in", { email, password, to: "/" }));
    const asked = await enter("ada@range.example", PASSWORD);
    expect([asked.status, asked.headers.get("location")]).toEqual([303, "/sign-in/code?to=%2F"]);
    const cookie = cookiesOf(asked.headers).get("cookie") ?? "";
    academy.db.sqlite.exec("UPDATE person SET ended_at = '2026-01-01', ended_by = 'x'");
    const late = await receiveCode(post("/api/sign-in/code", { code: begun.codes[1] ?? "" }, cookie));
    expect([late.status, late.headers.getSetCookie()]).toEqual([401, []]);
    const logIns = academy.db.sqlite.prepare("SELECT count(*) FROM auth_session");
    const before = logIns.pluck().get();
    const told = [];
    for (const [email, password] of [
      ["ada@range.example", PASSWORD],
      ["ADA@range.example", PASSWORD],
      ["ada@range.example", "not the password"],
      ["nobody@range.example", PASSWORD],
    ] as const) {
      academy.db.sqlite.exec("DELETE FROM sign_in_try");
      const answer = await enter(email, password);
      const text = (await answer.text()).replaceAll(/value="[^"]*"/g, "");
      told.push(JSON.stringify([answer.status, answer.headers.get("location"), answer.headers.getSetCookie(), text]));
    }
    expect(told[0]).toContain("401,null,[],");
    expect(new Set(told).size).toBe(1);
    expect(logIns.get()).toBe(before);
  });

  it("turned on: the log-in goes on under a new name, ten codes are shown once, and the next log-in asks for a code", async () => {
    const { viewer, begun, moved, sent } = await turnOn();
    expect(moved.outcome).toEqual({ kind: "done" });
    expect(await academy.logIn(sent)).toBeNull();
    const logIn = await require(cookiesOf(moved.cookies));
    expect(logIn.hasSecondStep).toBe(true);
    const first = JSON.stringify(loadSecondStep(viewer, logIn, {}));
    expect(begun.codes).toHaveLength(10);
    expect(begun.codes.every((code) => first.includes(code))).toBe(true);
    const again = JSON.stringify(loadSecondStep(viewer, logIn, {}));
    expect(begun.codes.some((code) => again.includes(code))).toBe(false);
    const asked = await receiveSignIn(post("/api/sign-in", { email: "ada@range.example", password: PASSWORD }));
    expect(asked.headers.get("location")).toBe("/sign-in/code?to=%2F");
    const cookie = cookiesOf(asked.headers).get("cookie") ?? "";
    expect((await receiveCode(post("/api/sign-in/code", { code: "no-such-code" }, cookie))).status).toBe(401);
    const kept = await receiveCode(post("/api/sign-in/code", { code: begun.codes[0] ?? "" }, cookie));
    expect(kept.status).toBe(303);
    expect((await require(cookiesOf(kept.headers))).userId).toBe(academy.ownerId);
  });

  it("turned off with the password alone; the kept codes are gone with it", async () => {
    const { viewer, moved } = await turnOn();
    const sent = cookiesOf(moved.cookies);
    expect((await dropSecondStep(viewer, sent, formOf({ password: "not this one" }))).outcome.kind).toBe("refused");
    const dropped = await dropSecondStep(viewer, sent, formOf({ password: PASSWORD }));
    expect((await require(cookiesOf(dropped.cookies))).hasSecondStep).toBe(false);
    expect(academy.db.sqlite.prepare("SELECT count(*) FROM two_factor").pluck().get()).toBe(0);
  });

  it("is asked from owner and director once others reach the server, and from a coach never", async () => {
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    const logIn = await require(await academy.signIn("ada@range.example", PASSWORD));
    const [ada, bo] = [academy.viewer(academy.ownerId), academy.viewer("bo")];
    expect(mustAddSecondStep(ada, logIn)).toBe(false);
    vi.stubEnv("PROOFBAND_ORIGIN", "https://range.example");
    expect([mustAddSecondStep(ada, logIn), mustAddSecondStep(bo, logIn)]).toEqual([true, false]);
  });

  it("its picture is a square with a quiet edge and the three corner marks of 7 × 7", () => {
    const { path, size } = qrPicture("otpauth://totp/Proofband:ada?secret=ABC&issuer=Proofband");
    const dark = new Set([...path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map((match) => `${match[1]} ${match[2]}`));
    const edge = [...Array(7).keys()].map((at) => 4 + at);
    for (const x of edge)
      expect([dark.has(`${x} 4`), dark.has(`${size - 1 - x} 4`), dark.has(`${x} ${size - 5}`)]).toEqual([
        true,
        true,
        true,
      ]);
    expect([...dark].every((each) => each.split(" ").every((at) => Number(at) >= 4 && Number(at) < size - 4))).toBe(
      true,
    );
  });
});
