import { expect, it } from "vitest";
import { buildRereadCsv } from "@/lib/report/reread-csv";
import { madePair } from "../verdict/made-rereads";
import { madeSource } from "./made-reader-error";

it("holds every pair by size, both values and their difference without dust, and neither student, day nor film", () => {
  const pairs = [madePair(90, 88.3, { level: "a" }), madePair(80.1, 80.4, { reader: "=Lark" })];
  expect(
    buildRereadCsv([madeSource(pairs)])
      .trim()
      .split("\r\n"),
  ).toEqual([
    "fundamental,unit,level,first reader,reader,first,second,second less first",
    "hinge,deg,b,Wren,'=Lark,80.1,80.4,0.3",
    "hinge,deg,a,Wren,Wren,90,88.3,-1.7",
  ]);
});
