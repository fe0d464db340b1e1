import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { admitToStudent } from "@/app/_server/gate";
import { chargesInForce } from "@/app/_server/people/charges-in-force";
import { loadCharges } from "@/app/_server/people/load-charges";
import { loadHanding } from "@/app/_server/people/load-handing";
import { loadPeople } from "@/app/_server/people/load-people";
import { drawAgain } from "@/app/_server/reread/reread-desk";
import { readRereadStudents } from "@/db/read/rereads";
import { updateDeparted } from "@/db/write/students";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { addTo, form } from "./inviting";
import { enterFilm, filmDays } from "./reread-season";

// Counts of students whom a viewer may not see.

let academy: HandingAcademy;
beforeEach(async () => {
  academy = await startHandingAcademy();
});
afterEach(() => academy.remove());

describe("an open draw with films of others", () => {
  it("says how many others to whoever sees them all, and no number to anybody else", () => {
    const { ada } = academy;
    const days = filmDays(ada);
    const film = (studentId: string, id: string) => {
      const scope = admitToStudent(ada, studentId);
      if (!scope) throw new Error("nobody");
      const entered = { id, day: days[0] ?? "", reference: `shelf ${id}`, now: `${days[0]}T18:00:00.000Z` };
      enterFilm(ada, scope, entered, [81, 82, 83]);
    };
    for (const [at, id] of [academy.nia, addTo(ada, "Tove"), addTo(ada, "Ulf")].entries()) film(id, `film${at}`);
    const made = drawAgain(ada, form({ fundamental: "hinge", level: "b", reader: "Ada", count: "9" }));
    if (made.kind !== "drawn") throw new Error(JSON.stringify(made));
    expect(new Set(readRereadStudents(ada.db, ada.scope, made.drawId).values()).size).toBe(3);
    const page = (userId: string) => JSON.stringify(loadHanding(academy.as(userId), randomUUID(), {}));
    expect(page(academy.ownerId)).toContain("with 2 other students");
    expect(page("bo")).not.toContain("other student");
    expect(page("bo")).toContain("in an open draw for Ada, with others: only a director sees them all");
  });
});

describe("students in nobody's charge", () => {
  it("are counted for an owner who sees none of them from five on; for a director each", () => {
    const { ada } = academy;
    const owner = { ...ada, roles: ["owner"] as const, scope: { ...ada.scope, students: [] } };
    const said = (viewer: typeof ada) => JSON.stringify(loadPeople(viewer, {}));
    expect([said(ada), said(owner)].filter((page) => !page.includes("Every student is in"))).toEqual([]);
    for (let count = 1; count <= 5; count++) {
      const id = addTo(ada, `Student ${count}`);
      ada.db.sqlite.prepare("DELETE FROM charge WHERE student_id = ?").run(id);
      const exact = count === 1 ? "One student is in nobody’s" : `${count} students are in nobody’s`;
      expect(said(ada)).toContain(exact);
      expect([count, said(owner).includes(exact)]).toEqual([count, count === 5]);
      expect([count, said(owner).includes("Fewer than five students are in nobody’s")]).toEqual([count, count < 5]);
    }
    const one = { ...owner, scope: { ...owner.scope, students: readAll().slice(0, 1) } };
    ada.db.sqlite.prepare("DELETE FROM charge").run();
    ada.db.sqlite.prepare("DELETE FROM student WHERE alias = 'Student 5' OR alias = 'Student 4'").run();
    expect(said(one)).toContain("One student, and fewer than five others, are in nobody’s charge");
  });

  it("are not those who have left", () => {
    const { ada } = academy;
    const id = addTo(ada, "Gone");
    ada.db.sqlite.prepare("DELETE FROM charge WHERE student_id = ?").run(id);
    expect(chargesInForce(ada).nobodys).toEqual([id]);
    expect(JSON.stringify(loadCharges(ada, randomUUID(), {}))).toContain("Gone");
    const student = admitToStudent(ada, id);
    if (!student) throw new Error("nobody");
    updateDeparted(ada.db, student, ada.today);
    expect(chargesInForce(ada).nobodys).toEqual([]);
    expect(JSON.stringify(loadPeople(ada, {}))).toContain("Every student is in");
    expect(JSON.stringify(loadCharges(ada, randomUUID(), {}))).not.toContain("Gone");
  });
});

const readAll = () => academy.db.sqlite.prepare<[], string>("SELECT id FROM student ORDER BY alias").pluck().all();
