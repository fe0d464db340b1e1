import { describe, expect, it } from "vitest";
import { checkOrigin, ownOrigins, type RequestFacts } from "@/app/_server/origin";

const origins = ownOrigins("3000", "https://school.example/ignored");
const read: RequestFacts = { method: "GET", host: "127.0.0.1:3000", origin: null, fetchSite: null, action: null };
const change: RequestFacts = { ...read, method: "POST", origin: "http://127.0.0.1:3000" };

describe("the origin of a request", () => {
  it("knows loopback and the stated public origin, without its path", () => {
    expect(origins).toEqual(["https://school.example", "http://127.0.0.1:3000", "http://localhost:3000"]);
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
