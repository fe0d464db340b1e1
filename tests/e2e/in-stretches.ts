import type { Page } from "playwright/test";
import { FULL } from "../many-cases";
import { addStudent } from "./add-student";
import { familysCookie, fewPageStates, type PageState, pageStates } from "./page-states";
import { test } from "./watched";

/** Pages are shared out among so many tests, so that both workers have work. */
const STRETCHES = FULL ? 6 : 2;

/** What is looked at, and how. */
interface Look {
  readonly title: (pages: "every page in every state" | "a page of each layout") => string;
  /** Begins the name of the student who has nothing on file. */
  readonly bare: string;
  /** What one page may take. */
  readonly pageMs: number;
  readonly look: (page: Page, states: readonly PageState[]) => Promise<void>;
}

/** Looks at pages in their states with a family's link open too: on a push a page of each layout, else all of them. */
export function inStretches({ title, bare, pageMs, look }: Look): void {
  for (let stretch = 0; stretch < STRETCHES; stretch++)
    test(`${title(FULL ? "every page in every state" : "a page of each layout")}, ${stretch + 1} of ${STRETCHES}`, async ({
      page,
      context,
      watch,
    }) => {
      // A page of nothing, and a question to nobody, may be answered by 404.
      watch.provoked.push(/status of 4\d\d/);
      await context.addCookies([familysCookie()]);
      const student = await addStudent(page, `${bare} ${stretch}`);
      const all = FULL ? pageStates(student) : fewPageStates(student);
      const mine = all.filter((_, at) => at % STRETCHES === stretch);
      test.setTimeout(60_000 + mine.length * pageMs);
      await look(page, mine);
    });
}
