import { expect, test } from "vitest";
import { findAccessToken, readAccessTokens } from "@/db/read/access-tokens";
import { insertAccessToken, updateTokenRevoked, updateTokenUsed } from "@/db/write/access-tokens";
import { academyScope, NOW, openAcademy } from "../academy-fixture";

const made = { id: "k1", name: "Phone", tokenHash: "hash", who: "Owner", createdAt: NOW };

test("a key is found by its hash, noted as used, and revoked once, by its own academy alone", async () => {
  const db = await openAcademy();
  const scope = academyScope();
  insertAccessToken(db, scope, made);
  expect(() => insertAccessToken(db, academyScope("a2"), { ...made, id: "k2" })).toThrow(/UNIQUE/);
  expect(findAccessToken(db, "hash")).toMatchObject({ id: "k1", academyId: "a1", revokedAt: null, lastUsedAt: null });
  expect(findAccessToken(db, "other")).toBeUndefined();
  updateTokenUsed(db, academyScope("a2"), "k1", NOW);
  expect(updateTokenRevoked(db, academyScope("a2"), "k1", NOW)).toEqual({ kind: "unchanged" });
  expect(readAccessTokens(db, scope)).toMatchObject([{ lastUsedAt: null, revokedAt: null }]);
  updateTokenUsed(db, scope, "k1", NOW);
  expect(updateTokenRevoked(db, scope, "k1", NOW)).toEqual({ kind: "revoked" });
  expect(updateTokenRevoked(db, scope, "k1", NOW)).toEqual({ kind: "unchanged" });
  expect(readAccessTokens(db, scope)).toEqual([
    { id: "k1", name: "Phone", who: "Owner", userId: null, createdAt: NOW, lastUsedAt: NOW, revokedAt: NOW },
  ]);
  expect(readAccessTokens(db, academyScope("a2"))).toEqual([]);
});
