import { writeFileSync } from "node:fs";
import { noteLooks } from "@/app/_server/access/looks";
import { type JudgedInput, judgedInput } from "@/app/_server/analysis/judged-input";
import { ACADEMY_CHOICES, type AcademyChoice, closeDatabases } from "@/app/_server/database";
import { chooseGroup } from "@/app/_server/drill/choose-group";
import { comparedFields } from "@/app/_server/drill/compared-fields";
import { admitMachine, admitToStudent, type Viewer } from "@/app/_server/gate";
import { loadAcademyRules } from "@/app/_server/season/student-record";
import { readStudents } from "@/db/read/students";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { trackName } from "@/lib/verdict/track-history";
import { wordsFor } from "@/lib/words/catalogue";
import { LineWriter } from "./read-lines";

const words = wordsFor("en");

interface TracksArguments {
  readonly student: string | null;
  readonly asOf: string | null;
  readonly noise: string | null;
  readonly academy: AcademyChoice | null;
  /** The fundamental whose drills are to be compared; null: every track as it is judged. */
  readonly drills: string | null;
  /** The group of clubs of that; null: the one with most tracks. */
  readonly club: string | null;
}

class Refused extends Error {}

function refuse(key: string, args: Readonly<Record<string, string>> = {}): never {
  throw new Refused(words.say(key, args));
}

function readArguments(argv: readonly string[]): TracksArguments {
  const given = new Map<string, string>();
  for (let at = 0; at < argv.length; at += 2) {
    const [word = "", value] = [argv[at], argv[at + 1]];
    if (!["--student", "--as-of", "--noise", "--academy", "--drills", "--club"].includes(word) || value === undefined)
      refuse("tracks.usage", { word });
    given.set(word, value);
  }
  const asOf = given.get("--as-of") ?? null;
  if (asOf !== null && !isCalendarDay(asOf)) refuse("tracks.bad-day", { word: asOf });
  const wished = given.get("--academy");
  const academy = ACADEMY_CHOICES.find((choice) => choice === wished) ?? null;
  if (wished !== undefined && academy === null) refuse("tracks.usage", { word: wished });
  const [drills, club] = [given.get("--drills") ?? null, given.get("--club") ?? null];
  if (club !== null && drills === null) refuse("tracks.usage", { word: "--club" });
  return { student: given.get("--student") ?? null, asOf, noise: given.get("--noise") ?? null, academy, drills, club };
}

/** Every judged track asked for, and the noise models that its sessions name. */
async function collect(viewer: Viewer, args: TracksArguments): Promise<JudgedInput> {
  const students = readStudents(viewer.db, viewer.scope).filter(
    (student) => args.student === null || student.id === args.student,
  );
  if (args.student !== null && students.length === 0) refuse("tracks.no-student", { id: args.student });
  const scopes = students.flatMap((student) => admitToStudent(viewer, student.id) ?? []);
  noteLooks(viewer, scopes, "npm run tracks");
  return judgedInput(viewer, scopes, args.asOf);
}

/** Of the tracks those of one fundamental and group of clubs, each with what the comparison of drills needs beside it. */
function compared(viewer: Viewer, tracks: readonly JudgedTrack[], args: TracksArguments): readonly ComparedTrack[] {
  const { drills, club } = args;
  const fundamentalId = loadAcademyRules(viewer.db, viewer.scope, viewer.academy).fundamentals.find(
    ({ id }) => id === drills,
  )?.id;
  if (fundamentalId === undefined) refuse("tracks.no-fundamental", { id: drills ?? "" });
  const groups = loadAcademyRules(viewer.db, viewer.scope, viewer.academy).grouping.map(({ id }) => id);
  const ids = readStudents(viewer.db, viewer.scope).map(({ id }) => id);
  const whose = new Map(
    groups.flatMap((clubGroup) =>
      ids.map((studentId) => [trackName(studentId, fundamentalId, clubGroup), { studentId, clubGroup }] as const),
    ),
  );
  const own = tracks.flatMap((track) => {
    const of = whose.get(track.id);
    return of === undefined ? [] : [{ track, ...of }];
  });
  const group = chooseGroup(groups, own, club ?? undefined);
  if (club !== null && group !== club) refuse("tracks.no-club", { id: club });
  const fields = comparedFields(viewer, fundamentalId);
  return own.flatMap(({ track, studentId, clubGroup }) => {
    const of = clubGroup === group ? fields(studentId) : null;
    return of === null ? [] : [{ ...track, ...of }];
  });
}

async function main(argv: readonly string[]): Promise<number> {
  const args = readArguments(argv);
  const viewer = await admitMachine({ choice: args.academy, locale: "en" });
  if (!viewer || (args.academy !== null && viewer.choice !== args.academy)) refuse("tracks.no-academy");
  const { tracks, models } = await collect(viewer, args);
  if (args.noise !== null)
    writeFileSync(args.noise, models.map((model) => `${JSON.stringify(model)}\n`).join(""), { mode: 0o600 });
  const out = new LineWriter(process.stdout);
  for (const track of args.drills === null ? tracks : compared(viewer, tracks, args))
    await out.write(JSON.stringify(track));
  return 0;
}

main(process.argv.slice(2))
  .catch((error: unknown) => {
    if (!(error instanceof Refused)) throw error;
    console.error(error.message);
    return 2;
  })
  .then((status) => {
    closeDatabases();
    process.exitCode = status;
  });
