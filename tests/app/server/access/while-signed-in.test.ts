import { notFound, redirect } from "next/navigation";
import { expect, it } from "vitest";
import { whileSignedIn } from "@/app/_server/access/while-signed-in";

it("whoever is signed out gets the other answer instead of being led away; any other way on and failure stays", async () => {
  expect(await whileSignedIn(null, async () => "answer")).toBe("answer");
  expect(await whileSignedIn(null, async () => redirect("/sign-in"))).toBeNull();
  expect(await whileSignedIn<string[]>([], async () => redirect("/sign-in?to=%2Fstudents"))).toEqual([]);
  await expect(whileSignedIn(null, async () => redirect("/students"))).rejects.toThrow("NEXT_REDIRECT");
  await expect(whileSignedIn(null, async () => redirect("/sign-in-elsewhere"))).rejects.toThrow("NEXT_REDIRECT");
  await expect(whileSignedIn(null, async () => notFound())).rejects.toThrow();
  await expect(whileSignedIn(null, () => Promise.reject(new Error("mine")))).rejects.toThrow("mine");
});
