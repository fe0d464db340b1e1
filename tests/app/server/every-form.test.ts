import { describe, expect, it } from "vitest";
import { DRAFT_FORMS } from "@/app/_server/draft/draft-forms";
import { readProject } from "../../structure/project-files";

/** What a press without anything typed is sent to, and what only asks: nothing of these can be lost. */
const NOTHING_TYPED: Readonly<Record<string, string>> = {
  pressSeen: "a button",
  pressDealtWith: "a button for each line and each list",
  keepView: "a button",
  forgetView: "a button",
  submitUndo: "a button for each change",
  submitEventBack: "a button",
  submitPracticeBack: "a button for each entry",
  submitPlanBack: "a button for each plan",
  pressReminded: "a button",
  pressWaiting: "a button for each fundamental",
  pressLot: "a button",
  submitFairStep: "buttons of each test",
  workOutFairTest: "keeps the form and shows it again",
  pressReminder: "a button for each family",
  workOutLetter: "keeps the form and shows it again",
  submitFamilyLanguage: "a button for each language",
  submitTold: "a button for each text",
  submitToldBack: "a button for each text",
  workOutPlan: "keeps the form and shows it again",
  submitReadBackDrop: "a button",
  submitDrillBack: "a button",
  submitTakeBack: "a button for each phrase",
  submitAsking: "buttons that say what was decided",
  renewFamilyLink: "a button for each link",
  revokeFamilyLink: "a button for each link",
  revokeAccessKey: "a button for each key",
  stopImport: "a button",
  changeOwnPassword: "a password is never kept; it is to be typed anew",
  endOwnLogIns: "a button",
  revokeInvitation: "a button for each link",
  sendInvitation: "a button beside the link",
  endColleague: "a button",
  makeColleagueLink: "a button",
  sendColleagueLink: "a button beside the link",
  submitRoles: "boxes, ticked as they were before",
  submitHandingBack: "a button for each hand-over",
  submitInherited: "a button",
  submitTenTwice: "choices and boxes, filled in as they are proposed",
  submitErase: "a name typed to say that it is meant; it is to be typed anew",
  submitHold: "one sentence, whose page it stands on says so when it is missing",
  submitRelease: "a button for each announcement",
  submitClock: "a button",
  beginOwnSecondStep: "a password is never kept",
  dropOwnSecondStep: "a password is never kept",
  proveOwnSecondStep: "a code is another one by the time it would come back",
  undoImport: "one box that says it is meant; it is to be ticked anew",
  answerImport:
    "its answers stand in the import's own draft, kept at each press, and wait in memory where the disk takes nothing",
  askGroup: "asks about a form that is kept",
  showGroup: "keeps the form and shows it again",
  askFilms: "three choices, which the address may hold",
  askCaptures: "asks about a form that is kept",
  showCaptures: "keeps the form and shows it again",
  askNote: "asks about a form that is kept",
  showNote: "keeps the form and shows it again",
  askGroupNote: "asks about a form that is kept",
  showGroupNote: "keeps the form and shows it again",
  submitNoteTap: "a button for each reading of a phrase",
  refreshForm: "keeps the form and shows it again",
  keepGrid: "a choice of how the grid is shown",
  fillDoseAnew: "keeps the form and shows it again",
  turnLines: "keeps the form and shows it again",
};

/** What a kept form is sent to. */
const KEPT: Readonly<Record<string, string>> = {
  submitSession: "session-form",
  submitGroup: "group-form",
  submitCorrection: "correct-form",
  submitAside: "aside-form",
  submitFacts: "facts-form",
  submitMove: "move-form",
  submitSplit: "split-form",
  submitMerge: "merge-form",
  submitStudent: "student-form",
  submitEvent: "event-form",
  submitRebaselines: "rebaseline-form",
  submitPriority: "priority-form",
  submitDrill: "drill-form",
  submitGoal: "goal-form",
  submitAcademyGoal: "academy-goal-form",
  submitOwning: "owning-form",
  submitFairTest: "fair-form",
  submitLibraryDrill: "library-form",
  submitDrillChange: "library-change",
  submitDefinition: "definition-form",
  submitDefinitionChange: "definition-change",
  submitDrillStop: "drill-stop",
  submitPlan: "film-plan-form",
  submitLetter: "letter-form",
  submitDrillDecision: "decision-form",
  submitPractice: "practice-form",
  submitReadBackWish: "read-back-form",
  submitReadBack: "read-back-values",
  submitWish: "reread-wish",
  submitRereads: "reread-values",
  submitSecond: "reread-second",
  submitConsent: "consent-form",
  submitWithdrawal: "withdrawal-form",
  submitDeparture: "departure-form",
  submitKeeping: "keeping-form",
  submitClubs: "club-form",
  makeAccessKey: "key-form",
  makeFamilyLink: "family-link",
  settleFamilyRequest: "family-answer",
  submitSettings: "settings",
  submitAccount: "account-form",
  submitInvitation: "invite-form",
  submitCharges: "charges-form",
  submitHanding: "handing-form",
};

/** What writes nothing itself, or hands on to what says a failure of the disk. */
const NO_WRITES: Readonly<Record<string, string>> = {
  stopImport: "a flag in memory",
  askFilms: "only answers",
  askGroup: "only answers",
  askCaptures: "only answers",
  askNote: "the desk passes over a failure",
  askGroupNote: "the desk passes over a failure",
  refreshForm: "keepLooked holds what the disk doesn't take",
  workOutLetter: "keepLooked holds what the disk doesn't take",
  workOutPlan: "keepLooked holds what the disk doesn't take",
  workOutFairTest: "keepLooked holds what the disk doesn't take",
  fillDoseAnew: "keepLooked holds what the disk doesn't take",
  showGroup: "keepLooked holds what the disk doesn't take",
  showCaptures: "keepLooked holds what the disk doesn't take",
};

/** Markup with fields somebody fills in outside a kept form, and why that is no loss. */
const UNKEPT_MARKUP: Readonly<Record<string, string>> = {
  "app/_ui/family/log.tsx":
    "a family has no log-in under which a form could be kept; refused, it comes back from memory as it was typed",
  "app/_ui/sheet/reading-sheet.tsx": "what a printed sheet shows; its address holds it",
  "app/_ui/group-filter/group-filter.tsx": "of whom a page counts; the address holds it",
  "app/_ui/roster/roster-tools.tsx": "what the roster is filtered by; the address holds it",
  "app/_ui/group/choose-group.tsx": "who is filmed; the address holds it",
  "app/_ui/fundamental/ask-plan.tsx": "which films are asked about; the address may hold it",
  "app/_ui/record-page/record-page.tsx": "as known on a day; the address holds it",
  "app/_ui/import/import.tsx": "the import's own draft",
  "app/_ui/import/archive-preview.tsx": "the import's own draft",
  "app/_ui/note/session-note.tsx": "buttons alone; its fields travel unseen",
  "app/_ui/roster/brief.tsx": "buttons and links alone",
  "app/_ui/keep/kept-form.tsx": "it is what keeps",
  "app/_ui/import/past-import.tsx": "one box that says it is meant",
  "app/_ui/import/upload.tsx": "a file or what was pasted, which the sender has",
};

const project = readProject();
const actionFiles = project.filter(({ name }) => /(^|\/)actions\.ts$/.test(name));
const actions = actionFiles.flatMap(({ name, text }) =>
  [...text.matchAll(/export async function (\w+)[\s\S]*?\n\}/g)].map((match) => ({
    name: match[1] ?? "",
    file: name,
    body: match[0],
  })),
);

/** A page's text with that of the loaders which it asks. */
function withLoaders(page: string): string {
  const text = project.find(({ name }) => name === page)?.text ?? "";
  const loaders = [...text.matchAll(/from "[./]*(_server\/[^"]+)"/g)].map((match) => `app/${match[1]}.ts`);
  return [text, ...project.filter(({ name }) => loaders.includes(name)).map((each) => each.text)].join("");
}

/** Whether a form element written out in a file holds a field, or a component that may hold one. */
function mayBeFilledIn(text: string): "yes" | "no" {
  const inside = [...text.matchAll(/<form\b[\s\S]*?<\/form>/g)].map(([form]) =>
    form.replace(/<(?:HiddenFields|Part)\b/g, ""),
  );
  const field = /<(?:[A-Z]\w*|select|textarea)\b|<input(?![^>]*type="hidden")/;
  return inside.some((form) => field.test(form)) ? "yes" : "no";
}

describe("every form of the house", () => {
  it("is sent to something that is known to keep it, or to have nothing to keep", () => {
    const known = new Set([...Object.keys(NOTHING_TYPED), ...Object.keys(KEPT)]);
    expect(actions.length).toBeGreaterThan(30);
    expect(actions.map(({ name }) => name).filter((name) => !known.has(name))).toEqual([]);
    const there = new Set(actions.map(({ name }) => name));
    expect([...known].filter((name) => !there.has(name))).toEqual([]);
  });

  it("says in words that the disk took nothing: kept forms by the common way of saving, presses by leading to a page", () => {
    const bare = actions.filter(({ name }) => !(name in KEPT) && !(name in NO_WRITES));
    expect(bare.filter(({ body }) => !/whenDiskFails\(|orNothing\(/.test(body)).map(({ name }) => name)).toEqual([]);
    expect(Object.keys(NO_WRITES).filter((name) => !(name in NOTHING_TYPED))).toEqual([]);
  });

  it("that is kept is one of DRAFT_FORMS, and each of these is sent somewhere", () => {
    expect(Object.values(KEPT).sort()).toEqual(Object.keys(DRAFT_FORMS).sort());
  });

  it("that is kept has a page that gives it an id", () => {
    const kept = actions.filter(({ name }) => name in KEPT);
    const pages = new Set(kept.map(({ file }) => file.replace(/actions\.ts$/, "page.tsx")));
    expect([...pages].filter((page) => !/require\w*Draft\w*\(/.test(withLoaders(page)))).toEqual([]);
  });

  it("with a field to fill in is markup of a kept form, or excused", () => {
    const filled = project.filter(({ name, text }) => name.endsWith(".tsx") && mayBeFilledIn(text) === "yes");
    expect(filled.map(({ name }) => name).filter((name) => !(name in UNKEPT_MARKUP))).toEqual([]);
  });

  it("is excused only while it is there", () => {
    const forms = new Set(project.filter(({ text }) => /<form\b/.test(text)).map(({ name }) => name));
    expect(Object.keys(UNKEPT_MARKUP).filter((name) => !forms.has(name))).toEqual([]);
  });
});
