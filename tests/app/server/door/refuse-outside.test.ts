import { NextRequest } from "next/server";
import { expect, it } from "vitest";
import { countRequest, FLOOD, senderOf } from "@/app/_server/door/flood";
import { proxy } from "@/proxy";

// What the outermost door says to a program and to a page's script, who read no page.

const HOST = "127.0.0.1:3000";

function send(method: string, pathname: string, headers: Record<string, string> = {}): Promise<Response> {
  return proxy(new NextRequest(`http://${HOST}${pathname}`, { method, headers: { host: HOST, ...headers } }));
}

/** A sender who has asked for all that it may, by a clock that is ahead, so that nothing is given back meanwhile. */
function flooding(name: string): Record<string, string> {
  const cookie = `proofband-demo.session_token=${name}`;
  const sender = senderOf(new Headers({ cookie }), null) ?? "";
  const ahead = Date.now() + 600_000;
  for (let n = 0; n <= FLOOD.burst; n++) countRequest(sender, ahead);
  return { cookie, origin: `http://${HOST}` };
}

const FOREIGN = { origin: "http://elsewhere.invalid" };

it.each([
  ["a foreign page", 403, "POST", FOREIGN, /this machine only/],
  ["past another server", 403, "POST", { "x-forwarded-for": "203.0.113.9" }, /this machine only/],
  ["a method that nothing answers", 405, "PUT", {}, /POST/],
  ["too many requests", 429, "POST", flooding("program"), /Too many/],
])(
  "at the door of other programs, %s: %i as data, with what to do",
  async (_name, status, method, headers, problem) => {
    const answer = await send(method, "/api/door/import", headers);
    expect(answer.status).toBe(status);
    expect(await answer.json()).toEqual({
      problem: expect.stringMatching(problem),
      do: expect.stringMatching(/./),
      reference: expect.anything(),
    });
    expect(answer.headers.get("content-security-policy")).not.toBeNull();
  },
);

it.each([
  ["a foreign page", 403, "POST", FOREIGN],
  ["a method that nothing answers", 405, "PUT", {}],
  ["too many requests", 429, "POST", flooding("typing")],
])("where a form is kept, %s: %i as the answer that its script reads", async (_name, status, method, headers) => {
  const answer = await send(method, "/api/drafts", headers);
  expect(answer.status).toBe(status);
  const said = expect.stringMatching(/nothing was changed|Nothing is lost/);
  expect(await answer.json()).toEqual({ kind: "refused", said, reference: expect.anything() });
});

it("elsewhere a whole page says it, with the methods that are answered and when to come back", async () => {
  const method = await send("PUT", "/students");
  expect([method.status, method.headers.get("allow")]).toEqual([405, "GET, HEAD, POST"]);
  expect(await method.text()).toMatch(/^<!doctype html>/);
  const flood = await send("POST", "/students", flooding("pages"));
  expect([flood.status, flood.headers.get("content-type")]).toEqual([429, "text/html; charset=utf-8"]);
  expect(Number(flood.headers.get("retry-after"))).toBeGreaterThan(0);
  expect(await flood.text()).toContain("your account is not locked");
  expect(await (await send("HEAD", "/students", { "next-action": "x" })).text()).toBe("");
});
