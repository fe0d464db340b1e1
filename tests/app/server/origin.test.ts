import { describe, expect, it, vi } from "vitest";
import {
  checkDoor,
  checkOrigin,
  configuredOrigins,
  isLocalHost,
  ownOrigins,
  type RequestFacts,
  wrongOrigin,
} from "@/app/_server/door/origin";

const origins = ownOrigins("3000", "https://school.example/ignored");
const read: RequestFacts = { method: "GET", host: "127.0.0.1:3000", origin: null, fetchSite: null, action: null };
const change: RequestFacts = { ...read, method: "POST", origin: "http://127.0.0.1:3000" };

describe("the origin of a request", () => {
  it("knows loopback and the stated public origin, without its path", () => {
    expect(origins).toEqual(["https://school.example", "http://127.0.0.1:3000", "http://localhost:3000"]);
  });

  it("follows what is stated, and throws where that is no address of the web", () => {
    vi.stubEnv("PORT", "3000");
    vi.stubEnv("PROOFBAND_ORIGIN", "");
    expect([configuredOrigins()[0], wrongOrigin()]).toEqual(["http://127.0.0.1:3000", null]);
    vi.stubEnv("PROOFBAND_ORIGIN", "https://films.example/");
    expect([configuredOrigins()[0], wrongOrigin()]).toEqual(["https://films.example", null]);
    expect(configuredOrigins()).toBe(configuredOrigins());
    vi.stubEnv("PROOFBAND_ORIGIN", "films.example");
    expect(wrongOrigin()).toBe("films.example");
    expect(configuredOrigins).toThrow("PROOFBAND_ORIGIN");
    vi.unstubAllEnvs();
  });

  it("refuses every host that isn't ours, also for reading", () => {
    for (const host of [null, "", "127.0.0.1", "127.0.0.1:3001", "evil.example", "localhost:3000.evil.example"]) {
      expect(checkOrigin({ ...read, host }, origins)).toEqual({ kind: "foreign" });
    }
    expect(checkOrigin({ ...read, host: "LOCALHOST:3000" }, origins).kind).toBe("ours");
  });

  it("lets a change pass only from one of our origins, to the letter", () => {
    expect(checkOrigin(change, origins).kind).toBe("ours");
    expect(checkOrigin({ ...change, host: "school.example", origin: "https://school.example" }, origins).kind).toBe(
      "ours",
    );
    for (const origin of ["null", "", "https://127.0.0.1:3000", "http://127.0.0.1:30001", "http://127.0.0.1:3000/"]) {
      expect(checkOrigin({ ...change, origin }, origins)).toEqual({ kind: "foreign" });
    }
  });

  it("without an origin, or with an opaque one, takes only the browser's word that it is the same one", () => {
    for (const origin of [null, "null"]) {
      for (const fetchSite of [null, "none", "same-site", "cross-site"]) {
        expect(checkOrigin({ ...change, origin, fetchSite }, origins)).toEqual({ kind: "foreign" });
      }
      expect(checkOrigin({ ...change, origin, fetchSite: "same-origin" }, origins)).toEqual({
        kind: "ours",
        origin: "http://127.0.0.1:3000",
      });
    }
  });

  it("takes no other method, and no action by reading", () => {
    for (const method of ["PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "get"]) {
      expect(checkOrigin({ ...change, method }, origins)).toEqual({ kind: "method" });
    }
    for (const method of ["GET", "HEAD"]) {
      expect(checkOrigin({ ...read, method, action: "abc" }, origins)).toEqual({ kind: "method" });
    }
  });
});

describe("the door of other programs", () => {
  const send: RequestFacts = { ...read, method: "POST" };

  it("takes a program's POST to this machine's own name, whatever public address is stated", () => {
    for (const host of ["127.0.0.1:3000", "LOCALHOST:3000"])
      expect(checkDoor({ ...send, host }, null, "3000").kind).toBe("ours");
    for (const host of [null, "school.example", "127.0.0.1", "127.0.0.1:3001"])
      expect(checkDoor({ ...send, host }, null, "3000")).toEqual({ kind: "foreign" });
    expect([isLocalHost("localhost:3000", "3000"), isLocalHost("school.example", "3000")]).toEqual([true, false]);
  });

  it("refuses what came past another server, and what a browser's page sends from elsewhere", () => {
    for (const past of ["127.0.0.1", "::1", "::ffff:127.0.0.1", ""])
      expect(checkDoor(send, past, "3000").kind).toBe("ours");
    for (const past of ["203.0.113.9", "127.0.0.1, 203.0.113.9", "10.0.0.2, 127.0.0.1"])
      expect(checkDoor(send, past, "3000")).toEqual({ kind: "foreign" });
    for (const change of [{ origin: "http://evil.example" }, { origin: "null" }, { fetchSite: "cross-site" }])
      expect(checkDoor({ ...send, ...change }, null, "3000")).toEqual({ kind: "foreign" });
    expect(checkDoor({ ...send, method: "DELETE" }, null, "3000")).toEqual({ kind: "method" });
  });
});
