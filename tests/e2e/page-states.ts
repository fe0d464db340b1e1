import { addDemoFamily, demoFamilyCookie, demoPageId } from "./demo-family";
import { builtPages } from "./routes";
import { served } from "./served";

/** A page as somebody may meet it. */
export interface PageState {
  /** Much on file, hardly anything, nothing; or what was asked for that isn't there. */
  readonly state: "full" | "few" | "empty" | "other";
  readonly path: string;
}

/** Of the demo's students one with much on file, and one with too few films for anything. */
const [RICH, FEW] = ["s01", "s31"];

/** A fundamental of which a change is proved, so that its chart has every mark. */
export const PROVED = `/students/${RICH}/trail-v`;

/** What a page answers to a question that finds nothing, or to nonsense in its address. */
const OTHERS = [
  "/students?q=nobody-of-that-name",
  "/students?sort=proved&who=all",
  "/students?sort=nonsense&page=99",
  `/students/${RICH}?club=nonsense`,
  `/students/${RICH}/hinge?club=nonsense`,
  `/students/${RICH}/known?on=2020-01-01`,
  "/import/past",
  "/sign-in?to=/students&wrong=1",
];

/** Pages of one student that hang on nothing else of theirs: another student has them too. */
function pagesOfStudent(): readonly string[] {
  const own = new RegExp(
    `^/students/${RICH}(?:/(?!sessions/[^/]+|drills/[^/]+|events/[^/]+|read-back/[^/]+|family/[^/]+).*)?$`,
  );
  return builtPages().filter((path) => own.test(path));
}

/** Pages that stand for the others on a push: one of each kind of layout. */
const REPRESENTATIVE = [
  "/students",
  `/students/${RICH}`,
  `/students/${RICH}/sessions/new`,
  `/students/${RICH}/report`,
  `/students/${RICH}/consent`,
  "/record",
  "/import/uploaded-for-the-tests",
  "/people",
  "/settings",
  "/filming",
  "/sign-in",
];

/**
 * Every page in every state that was designed for it.
 *
 * @param bare the way of a student of whom nothing is on file
 */
export function pageStates(bare: string): readonly PageState[] {
  const [, , bareId = ""] = bare.split("/");
  const of = (path: string, id: string): string => path.replace(`/students/${RICH}`, `/students/${id}`);
  return [
    ...builtPages().map((path) => ({ state: "full", path }) as const),
    ...pagesOfStudent().map((path) => ({ state: "few", path: of(path, FEW) }) as const),
    ...pagesOfStudent().map((path) => ({ state: "empty", path: of(path, bareId) }) as const),
    { state: "full", path: PROVED },
    ...OTHERS.map((path) => ({ state: "other", path }) as const),
    familysPage(),
  ];
}

/** Those that a push can wait for. */
export function fewPageStates(bare: string): readonly PageState[] {
  const built = new Set(builtPages());
  const missing = REPRESENTATIVE.filter((path) => !built.has(path));
  if (missing.length > 0) throw new Error(`no page any more: ${missing.join(", ")}`);
  return [
    ...REPRESENTATIVE.map((path) => ({ state: "full", path }) as const),
    { state: "full", path: PROVED },
    { state: "empty", path: bare },
    familysPage(),
  ];
}

/** The page behind a link of the demo, with the cookie that opens it. */
function familysPage(): PageState {
  addDemoFamily();
  return { state: "full", path: `/family/${demoPageId("live")}` };
}

/** What a browser shows at a family's page. */
export function familysCookie() {
  addDemoFamily();
  const [name = "", value = ""] = demoFamilyCookie("live").split("=");
  return { name, value, url: served.address };
}
